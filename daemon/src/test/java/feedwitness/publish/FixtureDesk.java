package feedwitness.publish;

import feedwitness.engine.ProbeDesk;
import feedwitness.quantity.LinkAddress;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;

/** A desk with two ports and one profile; what is saved is kept in memory. */
final class FixtureDesk implements ProbeDesk {
  /** Listening here lasts until {@link #release()}. */
  static final String SLOW = "/dev/serial/by-id/usb-slow";

  private final CountDownLatch inside = new CountDownLatch(1);
  private final CountDownLatch released = new CountDownLatch(1);
  private volatile boolean interrupted;
  private final List<ProbeDraft> saved = new ArrayList<>();

  @Override
  public List<PortCandidate> ports() {
    return List.of(
        new PortCandidate("/dev/serial/by-id/usb-tank", "USB serial", true, ""),
        new PortCandidate(
            "/dev/ttyS0", "", false, "add the user to the group dialout and log in again"));
  }

  @Override
  public List<ProfileChoice> profiles() {
    return List.of(new ProfileChoice("line-push", "Pushes lines of text", false, false, "mS/cm"));
  }

  @Override
  public Preview listen(LinkAddress link, String profile, int unit, Duration howLong) {
    if (link.text().equals("/dev/ttyS0")) {
      return new Preview("/dev/ttyS0: no permission to open the port", List.of());
    }
    if (profile.equals("broken")) {
      throw new IllegalStateException("the inside of the service");
    }
    if (profile.equals("beyond-repair")) {
      throw new AssertionError("the inside of the service");
    }
    if (link.text().equals(SLOW)) {
      inside.countDown();
      awaitRelease();
    }
    return new Preview(
        "",
        List.of(
            new Heard("31 2e 35 0d 0a", "1.5··", true, "1.5 mS/cm"),
            new Heard("ff ff", "··", false, "noise")));
  }

  private void awaitRelease() {
    try {
      released.await();
    } catch (InterruptedException e) {
      interrupted = true;
      Thread.currentThread().interrupt();
    }
  }

  /** Waits until somebody listens on the slow port. */
  void awaitListener() throws InterruptedException {
    inside.await();
  }

  void release() {
    released.countDown();
  }

  boolean wasInterrupted() {
    return interrupted;
  }

  @Override
  public synchronized SaveOutcome save(ProbeDraft draft) {
    if (draft.name().text().equals("tank")) {
      return new SaveOutcome.Refused(
          List.of(new FieldProblem("name", "name 'tank' is taken; choose another")));
    }
    saved.add(draft);
    return new SaveOutcome.Saved("/var/lib/feedwitness/generated.toml");
  }

  synchronized List<ProbeDraft> saved() {
    return List.copyOf(saved);
  }
}
