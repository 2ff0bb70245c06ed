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
 * @param interval expected time between readings, > 0: how often it pushes, or how often to ask
 * @param longestReply longest time the instrument may take to answer; also the silence kept after a
 *     time-out
 */
public record DeviceProfile(
    String name,
    String title,
    SerialSettings serial,
    Protocol protocol,
    Fields fields,
    InstrumentFacts instrument,
    Duration interval,
    Duration longestReply) {}
