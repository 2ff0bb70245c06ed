package feedwitness.publish;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import feedwitness.engine.ImportBatch;
import feedwitness.engine.ImportOutcome;
import feedwitness.publish.access.Passport;
import feedwitness.publish.access.Role;
import feedwitness.quantity.PointName;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A running service as a command on the same machine sees it. Every failure is an {@link
 * IOException} in words for people.
 */
public final class RemoteService {
  private static final Duration PATIENCE = Duration.ofSeconds(90);
  private static final Duration FIRST_PATIENCE = Duration.ofSeconds(10);

  private final URI url;
  private final Passport passport;
  private final HttpClient http;

  /**
   * {@code url}: where the page is, such as {@code http://127.0.0.1:8460/}.
   *
   * @throws IOException if the passport cannot be used
   */
  public RemoteService(URI url, Passport passport) throws IOException {
    this.url = url;
    this.passport = passport;
    this.http =
        passport
            .equip(HttpClient.newBuilder())
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(FIRST_PATIENCE)
            .build();
  }

  /** Where it is. */
  public URI url() {
    return url;
  }

  /** The clock of the service; also tells whether it answers at all. */
  public Instant now() throws IOException {
    try {
      return Instant.parse(json(get("/health").timeout(FIRST_PATIENCE)).path("now").asText());
    } catch (DateTimeException e) {
      throw new IOException(
          "what answers at %s is not Feedwitness; give the address of its page with --url"
              .formatted(url),
          e);
    }
  }

  /** Time zone of the nursery. */
  public ZoneId zone() throws IOException {
    try {
      return ZoneId.of(json(get(Routes.API + "/site")).path("zone").asText());
    } catch (DateTimeException e) {
      throw new IOException("the time zone of %s is not known here".formatted(url), e);
    }
  }

  /** Points as now configured. */
  public List<PointName> points() throws IOException {
    List<PointName> points = new ArrayList<>();
    for (JsonNode point : json(get(Routes.API + "/points"))) {
      points.add(new PointName(point.path("name").asText()));
    }
    return points;
  }

  /** Whether everything up to a stamp is safe on disk. */
  public boolean isDurable(int boot, long sequence) throws IOException {
    JsonNode mark = json(get("/health")).path("durable_through");
    return mark.path("boot").asInt() > boot
        || (mark.path("boot").asInt() == boot && mark.path("sequence").asLong() >= sequence);
  }

  /** The export as the service writes it; close it. Ends with an IOException if it is cut off. */
  public InputStream export(ExportQuery query) throws IOException {
    return stream(get(Routes.API + "/export?" + parameters(query)));
  }

  private static String parameters(ExportQuery query) {
    List<String> parameters = new ArrayList<>();
    query.points().forEach(point -> parameters.add("point=" + point.text()));
    query.from().ifPresent(from -> parameters.add("from=" + from));
    query.to().ifPresent(to -> parameters.add("to=" + to));
    parameters.add(
        "zone=" + URLEncoder.encode(query.layout().zone().getId(), StandardCharsets.UTF_8));
    ExportQuery.SEPARATORS.forEach(
        (name, separator) -> {
          if (separator == query.layout().separator()) {
            parameters.add("separator=" + name);
          }
        });
    parameters.add("decimal=" + (query.layout().decimalComma() ? "comma" : "point"));
    return String.join("&", parameters);
  }

  /** What a feed line's watch finds in what is stored, as a table; close it. */
  public InputStream replay(String line, Optional<Instant> from, Optional<Instant> to, boolean all)
      throws IOException {
    List<String> parameters = new ArrayList<>(List.of("all=" + all));
    from.ifPresent(time -> parameters.add("from=" + time));
    to.ifPresent(time -> parameters.add("to=" + time));
    return stream(
        get(
            "%s/%s/replay?%s"
                .formatted(
                    FeedLineRoutes.PATH,
                    URLEncoder.encode(line, StandardCharsets.UTF_8),
                    String.join("&", parameters))));
  }

  /** The journal as a table; close it. Ends with an IOException if it is cut off. */
  public InputStream journal() throws IOException {
    return stream(get(Routes.API + "/journal/export"));
  }

  /** What needs an answer, in lines for a terminal. */
  public List<String> alarms() throws IOException {
    return StandText.alarms(json(get(Routes.API + "/alarms")));
  }

  /** How everything stands, in lines for a terminal. */
  public List<String> status() throws IOException {
    List<String> lines = new ArrayList<>(StandText.health(json(get("/health"))));
    lines.add("");
    lines.addAll(StandText.points(json(get(Routes.API + "/points"))));
    List<String> feedLines = StandText.feedLines(json(get(FeedLineRoutes.PATH)));
    if (!feedLines.isEmpty()) {
      lines.add("");
      lines.addAll(feedLines);
    }
    lines.add("");
    lines.addAll(alarms());
    return lines;
  }

  /** Which checks are due, and what is on the shelf, in lines for a terminal. */
  public List<String> checks() throws IOException {
    return CheckText.overview(json(get(Routes.API + "/checks")));
  }

  /** How a probe or meter stands; {@code subject} is such as {@code tank} or {@code meter/pen}. */
  public CheckText.Standing check(String subject) throws IOException {
    return CheckText.standing(json(get(CheckText.path(subject))));
  }

  /**
   * Begins a check.
   *
   * @param confirmed whether objections were read
   */
  public CheckText.Standing beginCheck(
      String subject, String who, List<String> standards, boolean confirmed) throws IOException {
    Map<String, Object> body = Map.of("who", who, "standards", standards, "confirmed", confirmed);
    return CheckText.done(json(post(CheckText.path(subject) + "/begin", Json.bytes(body))));
  }

  /** Does a step of a check; {@code more} are further fields. */
  public CheckText.Standing stepCheck(
      String subject, String who, String step, Map<String, Object> more) throws IOException {
    Map<String, Object> body = new HashMap<>(more);
    body.put("who", who);
    body.put("step", step);
    return CheckText.done(json(post(CheckText.path(subject) + "/step", Json.bytes(body))));
  }

  /** Compares a probe with a sample or a thermometer; {@code more} are further fields. */
  public CheckText.Standing compareCheck(
      String subject, String who, String against, Map<String, Object> more) throws IOException {
    Map<String, Object> body = new HashMap<>(more);
    body.put("who", who);
    body.put("against", against);
    return CheckText.done(json(post(CheckText.path(subject) + "/compare", Json.bytes(body))));
  }

  /** The season's log of checks; close it. */
  public InputStream checkLog() throws IOException {
    return stream(get(Routes.API + "/checks/export"));
  }

  /** A backup of everything up to now; close it. Ends with an IOException if it is cut off. */
  public InputStream backup() throws IOException {
    return stream(post(Routes.API + "/backup", "{}".getBytes(StandardCharsets.UTF_8)));
  }

  /** Hands rows over. */
  public ImportOutcome take(ImportBatch batch) throws IOException {
    JsonNode answer =
        json(
            post(
                Routes.API + "/points/" + batch.point().text() + "/imports",
                ImportRequest.write(batch)));
    return new ImportOutcome.Taken(
        answer.path("taken").asInt(),
        answer.path("known").asInt(),
        answer.path("retired").asInt(),
        answer.path("boot").asInt(),
        answer.path("sequence").asLong());
  }

  /** A code that lets one device in, and where that finds the page. */
  public PairingOffer offerCode(Role role) throws IOException {
    JsonNode offer =
        json(post(Routes.API + "/access/codes", Json.bytes(Map.of("role", role.code()))));
    return new PairingOffer(
        offer.path("code").asText(),
        Duration.ofSeconds(offer.path("valid_s").asLong()),
        offer.path("address").asText(""),
        offer.path("link").asText(""));
  }

  /** All that are paired. */
  public List<PairedDevice> devices() throws IOException {
    List<PairedDevice> devices = new ArrayList<>();
    for (JsonNode each : json(get(Routes.API + "/access/devices")).path("devices")) {
      devices.add(
          new PairedDevice(
              each.path("name").asText(),
              each.path("role").asText(),
              time(each.path("paired_at").asText("")),
              each.path("paired_by").asText(),
              time(each.path("last_seen").asText(""))));
    }
    return devices;
  }

  private static Optional<Instant> time(String text) {
    return text.isEmpty() || text.equals("null")
        ? Optional.empty()
        : Optional.of(Instant.parse(text));
  }

  /** Shuts a device out, by name or identifier; its name. */
  public String revoke(String device) throws IOException {
    String path =
        Routes.API
            + "/access/devices/"
            + URLEncoder.encode(device, StandardCharsets.UTF_8).replace("+", "%20")
            + "/revoke";
    return json(post(path, "{}".getBytes(StandardCharsets.UTF_8))).path("name").asText();
  }

  /**
   * A code to be shown.
   *
   * @param address of the page for phones; empty if not known
   * @param link the page with the code; empty if not known
   */
  public record PairingOffer(String code, Duration validity, String address, String link) {}

  /** A device that is paired; times are empty if not known. */
  public record PairedDevice(
      String name,
      String role,
      Optional<Instant> pairedAt,
      String pairedBy,
      Optional<Instant> lastSeen) {}

  private HttpRequest.Builder get(String path) {
    return passport.sign(HttpRequest.newBuilder(url.resolve(path)).timeout(PATIENCE));
  }

  private HttpRequest.Builder post(String path, byte[] body) {
    return get(path)
        .header("Content-Type", Json.MEDIA_TYPE)
        .POST(HttpRequest.BodyPublishers.ofByteArray(body));
  }

  private JsonNode json(HttpRequest.Builder request) throws IOException {
    try (InputStream in = stream(request)) {
      return Json.tree(in.readAllBytes());
    } catch (JsonProcessingException e) {
      throw new IOException(
          "what answers at %s is not Feedwitness; give the address of its page with --url"
              .formatted(url),
          e);
    }
  }

  private InputStream stream(HttpRequest.Builder request) throws IOException {
    HttpResponse<InputStream> answer;
    try {
      answer = http.send(request.build(), BodyHandlers.ofInputStream());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    } catch (IOException e) {
      throw new IOException(
          "nothing answers at %s (%s)".formatted(url, e.getClass().getSimpleName()), e);
    }
    if (answer.statusCode() / 100 != 2) {
      try (InputStream in = answer.body()) {
        throw new IOException(detail(in.readNBytes(1 << 16), answer.statusCode()));
      }
    }
    return answer.body();
  }

  private String detail(byte[] problem, int status) {
    try {
      String detail = Json.tree(problem).path("detail").asText();
      if (!detail.isBlank()) {
        return Quoted.plain(detail);
      }
    } catch (IOException e) {
      // not one of our problems
    }
    return "%s answers %d; is it Feedwitness, and of this version?".formatted(url, status);
  }
}
