package feedwitness.settings;

import feedwitness.profile.Protocol;
import feedwitness.quantity.LinkAddress;
import feedwitness.site.ProbeMount;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What no point can see alone: names and addresses taken twice, ports that cannot be shared. */
final class SharedPorts {
  private final Map<String, PlacedPoint> names = new HashMap<>();
  private final Map<String, PlacedPoint> ports = new LinkedHashMap<>();
  private final Map<String, PlacedPoint> addresses = new HashMap<>();

  private SharedPorts() {}

  /** Checks all points of all files, in the order in which they were read. */
  static void check(List<PlacedPoint> points) {
    SharedPorts seen = new SharedPorts();
    points.forEach(seen::look);
  }

  private void look(PlacedPoint placed) {
    String name = placed.point().name().text();
    PlacedPoint namesake = names.putIfAbsent(name, placed);
    if (namesake != null) {
      placed
          .section()
          .problem(
              "name",
              "another point has this name (%s)".formatted(namesake.where()),
              "give each point a name of its own, or remove one of the two");
      return;
    }
    placed.point().probe().ifPresent(probe -> port(placed, probe));
  }

  private void port(PlacedPoint placed, ProbeMount probe) {
    String port = probe.link().text();
    PlacedPoint first = ports.putIfAbsent(port, placed);
    Optional<ProbeMount> other =
        Optional.ofNullable(first).flatMap(neighbour -> neighbour.point().probe());
    if (first == null || other.isEmpty()) {
      addresses.put(port + " " + probe.unit(), placed);
      return;
    }
    if (!(probe.profile().protocol() instanceof Protocol.Modbus
        && other.get().profile().protocol() instanceof Protocol.Modbus)) {
      protocols(placed, first);
    } else {
      settings(placed, first, probe, other.get());
      address(placed, probe);
    }
  }

  private static void protocols(PlacedPoint placed, PlacedPoint first) {
    placed
        .section()
        .problem(
            "port",
            "this port is taken by point '%s' (%s), and only Modbus probes can share one"
                .formatted(first.point().name(), first.where()),
            "give each probe that sends lines a port of its own");
  }

  private static void settings(
      PlacedPoint placed, PlacedPoint first, ProbeMount one, ProbeMount other) {
    String mine = one.profile().serial().text();
    String theirs = other.profile().serial().text();
    if (one.link() instanceof LinkAddress.Serial && !mine.equals(theirs)) {
      placed
          .section()
          .problem(
              "profile",
              "profile %s needs the line at %s, but point '%s' on the same port has it at %s"
                  .formatted(one.profile().name(), mine, first.point().name(), theirs),
              "set all instruments of one bus, and their profiles, to the same line settings");
    }
  }

  private void address(PlacedPoint placed, ProbeMount probe) {
    PlacedPoint holder = addresses.putIfAbsent(probe.link().text() + " " + probe.unit(), placed);
    if (holder != null) {
      placed
          .section()
          .problem(
              "unit",
              "address %d on %s is taken by point '%s' (%s)"
                  .formatted(
                      probe.unit(), probe.link().text(), holder.point().name(), holder.where()),
              "give each instrument on a bus an address of its own");
    }
  }
}
