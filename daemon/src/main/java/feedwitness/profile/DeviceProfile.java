package feedwitness.profile;

import feedwitness.quantity.SerialSettings;
import java.time.Duration;

/**
 * One instrument family.
 *
 * @param name the file's name without {@code .toml}
 * @param title a line for people
 * @param serial settings of the serial line; also kept, unused, for a TCP serial server
 * @param protocol how messages look and are asked for
 * @param fields what a message holds
 * @param instrument what the maker states of the instrument
 * @param interval expected time between readings, 1 ms to 1 day: how often it pushes, or how often
 *     to ask
 * @param longestReply longest time the instrument may take to answer, 1 ms to 1 minute; also the
 *     silence kept after a time-out
 */
public record DeviceProfile(
    String name,
    String title,
    SerialSettings serial,
    Protocol protocol,
    Fields fields,
    InstrumentFacts instrument,
    Duration interval,
    Duration longestReply) {
  private static final Duration LONGEST_INTERVAL = Duration.ofDays(1);
  private static final Duration LONGEST_WAIT = Duration.ofMinutes(1);

  /**
   * Checks what the parts cannot check alone.
   *
   * @throws IllegalArgumentException naming item, value, limit and remedy
   */
  public DeviceProfile {
    if (!name.matches("[A-Za-z0-9][A-Za-z0-9._-]{0,63}")) {
      throw new IllegalArgumentException(
          "profile name '%s' may have 1 to 64 letters, digits, dots, dashes and underscores"
              .formatted(name));
    }
    if (title.isBlank()) {
      throw new IllegalArgumentException("profile %s needs a title".formatted(name));
    }
    checkDuration("interval", interval, LONGEST_INTERVAL);
    checkDuration("longest reply", longestReply, LONGEST_WAIT);
    checkPlace("conductivity", fields.conductivity(), protocol);
    fields.temperature().ifPresent(place -> checkPlace("temperature", place, protocol));
    fields.contact().ifPresent(at -> checkPlace("contact", at.place(), protocol));
  }

  private static void checkDuration(String item, Duration value, Duration limit) {
    if (value.compareTo(Duration.ofMillis(1)) < 0 || value.compareTo(limit) > 0) {
      throw new IllegalArgumentException(
          "%s %s ms is outside 1 to %s ms".formatted(item, value.toMillis(), limit.toMillis()));
    }
  }

  private static void checkPlace(String field, Fields.Place place, Protocol protocol) {
    if (protocol instanceof Protocol.Line line && place instanceof Fields.Place.Group group) {
      checkGroup(field, group.name(), line);
      group.unitGroup().ifPresent(unit -> checkGroup("unit of " + field, unit, line));
    } else if (protocol instanceof Protocol.Modbus modbus
        && place instanceof Fields.Place.Registers registers) {
      if (modbus.reads().stream().noneMatch(read -> read.covers(registers))) {
        throw new IllegalArgumentException(
            "%s stands in %s, but no read of the profile brings it; add or widen a read"
                .formatted(field, registers.text()));
      }
    } else {
      throw new IllegalArgumentException(
          "%s stands in %s, which a %s profile does not have"
              .formatted(
                  field, place.text(), protocol instanceof Protocol.Line ? "line" : "Modbus"));
    }
  }

  private static void checkGroup(String field, String group, Protocol.Line line) {
    if (!line.hasGroup(group)) {
      throw new IllegalArgumentException(
          "%s is taken from group '%s', but the pattern has no (?<%s>…)"
              .formatted(field, group, group));
    }
  }
}
