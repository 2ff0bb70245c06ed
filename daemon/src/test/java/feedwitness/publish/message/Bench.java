package feedwitness.publish.message;

import static org.junit.jupiter.api.Assertions.assertEquals;

import feedwitness.site.MailRoute;
import feedwitness.site.MailRoute.Login;
import feedwitness.site.MailRoute.Security;
import feedwitness.site.Urgency;
import feedwitness.site.WebhookRoute;
import feedwitness.site.WebhookRoute.Reach;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What tests of messages have in common. */
final class Bench {
  /** So that a server that hangs costs a test a second, not a minute. */
  static final Limits SHORT =
      new Limits(Duration.ofSeconds(1), Duration.ofMillis(700), Duration.ofMillis(1500), 64 * 1024);

  static final String PASSWORD = "hellebore-in-february";
  static final String SECRET = "a-secret-of-thirty-characters!";
  static final Instant MONDAY = Instant.parse("2026-06-01T12:00:00Z");

  private static final Set<String> OURS = Set.of("webhook", "message", "HttpClient@");

  private Bench() {}

  static Path secret(Path folder, String text) throws IOException {
    Path file = folder.resolve("secret-" + text.length());
    Files.writeString(file, text + "\n");
    return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
  }

  static MailRoute mail(int port, Security security, Optional<Path> password, Optional<String> ca) {
    return new MailRoute(
        "localhost",
        port,
        security,
        password.map(file -> new Login("grower", file.toString())),
        "feed@quarry-end.example",
        List.of("grower@quarry-end.example"),
        List.of("helper@quarry-end.example"),
        Urgency.NOTE,
        ca);
  }

  static WebhookRoute hook(String url, Path secret, Reach reach, Optional<String> ca) {
    return new WebhookRoute("desk", url, secret.toString(), reach, Urgency.NOTE, ca);
  }

  static Notice notice(String id, Urgency urgency, Notice.Change change) {
    return new Notice(
        id,
        "line/conductivity-low",
        "line",
        urgency,
        change,
        "line: 0.98 mS/cm is below the low limit 1.20 mS/cm",
        "check the injector and the stock barrel",
        MONDAY);
  }

  static Letter letter(Letter.Kind kind) {
    return new Letter(
        "0b54f3a2-3f62-4b7c-9d61-2f0c5d2d7a10",
        "mail",
        kind,
        Urgency.HIGH,
        "Quarry End Nursery: line: 0.98 mS/cm at 25 °C",
        "line: 0.98 mS/cm\n. a line that begins with a dot\nWas zu tun ist: Düse prüfen\n",
        MONDAY,
        List.of());
  }

  /** Waits for what happens on other threads. */
  static void await(String what, java.util.function.BooleanSupplier there) throws Exception {
    for (int i = 0; i < 400 && !there.getAsBoolean(); i++) {
      Thread.sleep(50);
    }
    assertEquals(what + ": true", what + ": " + there.getAsBoolean());
  }

  /** Threads of clients; those of deadlines end by themselves a second after the last. */
  static Set<String> threads() {
    return Thread.getAllStackTraces().keySet().stream()
        .map(Thread::getName)
        .filter(name -> OURS.stream().anyMatch(name::startsWith))
        .collect(Collectors.toSet());
  }

  static void noThreadIsLeft() throws Exception {
    await("no thread is left", () -> threads().isEmpty());
  }
}
