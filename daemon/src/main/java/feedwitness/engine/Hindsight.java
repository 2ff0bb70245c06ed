package feedwitness.engine;

import feedwitness.ledger.Afterthought;
import feedwitness.ledger.Afterthoughts;
import feedwitness.ledger.EvidenceLedger;
import feedwitness.ledger.History;
import feedwitness.quality.Qualification;
import feedwitness.quantity.Stamp;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.tinylog.Logger;

/**
 * Puts on record what a reading gives reason to say of those before it, with the times they were
 * taken. On the engine's thread.
 */
public final class Hindsight implements Consumer<Qualification> {
  /** A spike is some readings back; a number that stuck, hours to days. */
  private static final List<Duration> BACK =
      List.of(Duration.ofMinutes(2), Duration.ofHours(2), Duration.ofDays(3));

  private final History history;
  private final EvidenceLedger evidence;
  private final Afterthoughts later;
  private final Supplier<Stamp> now;

  public Hindsight(
      History history, EvidenceLedger evidence, Afterthoughts later, Supplier<Stamp> now) {
    this.history = history;
    this.evidence = evidence;
    this.later = later;
    this.now = now;
  }

  @Override
  public void accept(Qualification said) {
    Stamp last = stampOf(said, said.lastSequence()).orElseGet(() -> undated(said));
    Stamp first = stampOf(said, said.firstSequence()).orElse(undated(said));
    var unused =
        evidence
            .append(now.get(), Afterthought.draft(said, first, last))
            .whenComplete(
                (kept, failure) -> {
                  if (kept != null) {
                    later.add(Afterthought.read(kept));
                  } else {
                    Logger.warn("not recorded: {} of earlier readings: {}", said, failure);
                  }
                });
  }

  private Optional<Stamp> stampOf(Qualification said, long sequence) {
    Instant end = said.when().plusMillis(1);
    for (Duration back : BACK) {
      AtomicReference<@Nullable Stamp> found = new AtomicReference<>();
      history.scan(
          said.point(),
          end.minus(back),
          end,
          m -> {
            if (m.stamp().boot() == said.boot() && m.stamp().sequence() == sequence) {
              found.set(m.stamp());
            }
          });
      if (found.get() != null) {
        return Optional.ofNullable(found.get());
      }
    }
    return Optional.empty();
  }

  private static Stamp undated(Qualification said) {
    return new Stamp(said.boot(), said.lastSequence(), 0, 0, false);
  }
}
