package feedwitness.acquire;

import feedwitness.frame.FrameOutcome;
import feedwitness.frame.ModbusRequest;
import feedwitness.frame.ModbusRtuFramer;
import feedwitness.profile.Protocol;
import feedwitness.quantity.SerialSettings;
import feedwitness.quantity.TimeSource;
import feedwitness.sample.DecodeOutcome;
import feedwitness.sample.Decoder;
import feedwitness.sample.Missing.Cause;
import feedwitness.wire.Port;
import feedwitness.wire.PortLostException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** One master and its units on an RS-485 bus, asked in turn, one question at a time. */
final class ModbusBus implements Conversation {
  private final SerialSettings serial;
  private final WireObserver observer;
  private final Exchange exchange;
  private final List<Unit> units = new ArrayList<>();

  private record Unit(
      ProbePlan plan,
      List<ModbusRequest> requests,
      Decoder decoder,
      ProbeWatch watch,
      Rhythm rhythm,
      String silence) {}

  ModbusBus(PortPlan plan, List<ProbeWatch> watches, WireObserver observer, TimeSource ticks) {
    this.serial = plan.serial();
    this.observer = observer;
    this.exchange = new Exchange(observer, ticks);
    for (int i = 0; i < plan.probes().size(); i++) {
      ProbePlan probe = plan.probes().get(i);
      Protocol.Modbus protocol = (Protocol.Modbus) probe.profile().protocol();
      units.add(
          new Unit(
              probe,
              protocol.reads().stream()
                  .map(r -> new ModbusRequest(probe.unit(), r.function(), r.start(), r.count()))
                  .toList(),
              Decoder.of(probe.profile()),
              watches.get(i),
              new Rhythm(probe.profile().interval(), ticks),
              "no answer from unit %d on %s; check its power, its address, %s and wires A and B"
                  .formatted(probe.unit(), plan.link().text(), serial.text())));
    }
  }

  @Override
  public void begin() {}

  @Override
  public void step(Port port) throws PortLostException {
    Unit next = units.get(0);
    for (Unit unit : units) {
      if (unit.rhythm().nanosLeft() < next.rhythm().nanosLeft()) {
        next = unit;
      }
    }
    long left = next.rhythm().nanosLeft();
    if (left > 0) {
      // Nobody speaks on a bus unasked; what arrives now is noise or too late.
      port.read((int) Math.max(1, Math.min(STEP_MILLIS, left / 1_000_000)));
    } else if (ask(next, port)) {
      next.rhythm().answered();
    } else {
      next.rhythm().failed();
    }
    units.forEach(unit -> unit.watch().tick(unit.silence()));
  }

  /** Asks all questions of a unit; returns whether they made a reading. */
  private boolean ask(Unit unit, Port port) throws PortLostException {
    List<FrameOutcome.Frame> answers = new ArrayList<>();
    for (ModbusRequest request : unit.requests()) {
      ModbusRtuFramer framer = new ModbusRtuFramer();
      framer.expect(request);
      List<FrameOutcome> outcomes =
          exchange.ask(port, framer, request.octets(), allowed(unit, request));
      if (outcomes.isEmpty()
          || !(outcomes.get(outcomes.size() - 1) instanceof FrameOutcome.Frame frame)) {
        noteRejections(unit, outcomes);
        exchange.keepSilent(port, unit.plan().profile().longestReply());
        return false;
      }
      answers.add(frame);
      if (isException(frame)) {
        break;
      }
    }
    DecodeOutcome decoded = unit.decoder().decode(answers);
    observer.decoded(decoded);
    Understanding.apply(decoded, answers, unit.watch());
    return decoded instanceof DecodeOutcome.Decoded;
  }

  /** After a refusal asking on is pointless; the decoder says what it means. */
  private static boolean isException(FrameOutcome.Frame answer) {
    return (answer.octets().at(1) & 0x80) != 0;
  }

  private static void noteRejections(Unit unit, List<FrameOutcome> outcomes) {
    for (FrameOutcome outcome : outcomes) {
      if (outcome instanceof FrameOutcome.Rejection rejection
          && rejection.reason() != FrameOutcome.Reason.ECHO) {
        unit.watch()
            .note(
                Cause.UNREADABLE,
                "unit %d: %s [%s]; check baud rate, parity, and wires A and B"
                    .formatted(unit.plan().unit(), rejection.detail(), rejection.octets().toHex()));
      }
    }
  }

  /** The unit's own time to think, and the time the octets need on the line. */
  private Duration allowed(Unit unit, ModbusRequest request) {
    int octets = 8 + 5 + 2 * request.count();
    long onTheLineMicros = octets * 11L * 1_000_000L / serial.baud();
    return unit.plan().profile().longestReply().plus(Duration.ofNanos(onTheLineMicros * 1000));
  }
}
