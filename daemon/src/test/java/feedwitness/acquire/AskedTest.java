package feedwitness.acquire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import feedwitness.frame.ModbusCrc;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.Octets;
import feedwitness.sample.Indication;
import feedwitness.sample.Missing;
import feedwitness.sample.Sample;
import feedwitness.simulate.PseudoTerminal;
import java.time.Duration;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Instruments that must be asked, on a real pseudo-terminal. */
@Timeout(60)
class AskedTest {
  private static final Duration INTERVAL = Duration.ofMillis(100);

  /** Answers by a rule until closed. */
  private static final class Responder implements AutoCloseable {
    private final PseudoTerminal terminal;
    private final Function<Octets, Octets[]> rule;
    private final Thread thread = new Thread(this::answer);
    private volatile boolean stopping;

    Responder(Function<Octets, Octets[]> rule) throws Exception {
      this.terminal = PseudoTerminal.open();
      this.rule = rule;
      thread.start();
    }

    private void answer() {
      try {
        while (!stopping) {
          Octets question = terminal.read(100);
          if (question.length() > 0) {
            for (Octets answer : rule.apply(question)) {
              terminal.write(answer);
            }
          }
        }
      } catch (Exception e) {
        stopping = true;
      }
    }

    LinkAddress link() {
      return new LinkAddress.Serial(terminal.slavePath().toString());
    }

    @Override
    public void close() throws Exception {
      stopping = true;
      thread.join();
      terminal.close();
    }
  }

  @Test
  void asksForALineAndReadsTheAnswer() throws Exception {
    try (Responder drain =
            new Responder(
                question ->
                    question.toText().equals("R\r")
                        ? new Octets[] {Octets.ofText("1413.0,24.9\r")}
                        : new Octets[0]);
        Bench bench = new Bench(Bench.asked(drain.link(), "R\r", INTERVAL))) {
      assertEquals(1413, bench.nextIndication().reading().conductivity());
    }
  }

  @Test
  void readsSeveralUnitsOnOneBusAndADeadOneDoesNotStopTheOthers() throws Exception {
    try (Responder bus =
            new Responder(
                question ->
                    question.at(0) == 12 ? new Octets[] {reply(12, 1380, 142)} : new Octets[0]);
        Bench bench = new Bench(twoUnits(bus))) {
      assertEquals(1380, bench.nextIndication("line").reading().conductivity());
      Missing missing = bench.nextMissing();
      assertEquals("tank", missing.point().text());
      assertEquals(Missing.Cause.SILENT, missing.cause());
      assertTrue(missing.detail().contains("unit 11"), missing.detail());
      assertEquals(14.2, bench.nextIndication("line").reading().temperature(), 1e-9);
    }
  }

  @Test
  void neverTakesALateAnswerForTheNext() throws Exception {
    // Unit 11 answers 450 ms late: after the time-out of 300 ms, within the silence that follows.
    Thread[] late = new Thread[1];
    PseudoTerminal[] wire = new PseudoTerminal[1];
    try (Responder bus =
        new Responder(
            question -> {
              if (question.at(0) == 12) {
                return new Octets[] {reply(12, 1380, 142)};
              }
              late[0] =
                  new Thread(
                      () -> {
                        try {
                          Thread.sleep(450);
                          wire[0].write(reply(11, 9999, 999));
                        } catch (Exception e) {
                          Thread.currentThread().interrupt();
                        }
                      });
              late[0].start();
              return new Octets[0];
            })) {
      wire[0] = bus.terminal;
      try (Bench bench = new Bench(twoUnits(bus))) {
        bench.nextMissing();
        for (Sample sample : bench.all()) {
          assertFalse(
              sample instanceof Indication indication
                  && indication.reading().conductivity() == 9999,
              "a late answer became a reading");
        }
      }
      late[0].join();
    }
  }

  @Test
  void dropsTheEchoOfItsOwnQuestionAndLeadingGarbage() throws Exception {
    try (Responder bus =
            new Responder(
                question ->
                    new Octets[] {
                      question, Octets.ofHex("00 ff"), reply(question.at(0), 1070, 179)
                    });
        Bench bench = new Bench(twoUnits(bus))) {
      assertEquals(1070, bench.nextIndication("tank").reading().conductivity());
      assertEquals(1070, bench.nextIndication("line").reading().conductivity());
    }
  }

  @Test
  void aReplyDamagedOnTheWayYieldsNoValue() throws Exception {
    try (Responder bus =
            new Responder(
                question -> {
                  byte[] octets = reply(question.at(0), 1070, 179).toArray();
                  octets[4] ^= 0x40;
                  return new Octets[] {Octets.of(octets)};
                });
        Bench bench = new Bench(twoUnits(bus))) {
      Missing missing = bench.nextMissing();
      assertEquals(Missing.Cause.UNREADABLE, missing.cause(), missing.detail());
      assertTrue(bench.all().stream().noneMatch(sample -> sample instanceof Indication));
    }
  }

  @Test
  void saysWhatTheInstrumentRefused() throws Exception {
    try (Responder bus =
            new Responder(
                question ->
                    new Octets[] {
                      ModbusCrc.append(
                          Octets.of(new byte[] {(byte) question.at(0), (byte) 0x84, 2}))
                    });
        Bench bench = new Bench(twoUnits(bus))) {
      Missing missing = bench.nextMissing();
      assertEquals(Missing.Cause.INSTRUMENT_REFUSED, missing.cause());
      assertTrue(missing.detail().contains("exception 2"), missing.detail());
    }
  }

  private static PortPlan twoUnits(Responder bus) {
    return Bench.plan(
        bus.link(),
        Bench.probe("tank", Bench.modbusProfile(INTERVAL), 11),
        Bench.probe("line", Bench.modbusProfile(INTERVAL), 12));
  }

  private static Octets reply(int unit, int conductivity, int temperature) {
    return ModbusCrc.append(
        Octets.of(
            new byte[] {
              (byte) unit,
              4,
              4,
              (byte) (conductivity >> 8),
              (byte) conductivity,
              (byte) (temperature >> 8),
              (byte) temperature
            }));
  }
}
