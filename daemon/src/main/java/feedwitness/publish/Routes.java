package feedwitness.publish;

import feedwitness.engine.LiveView;
import feedwitness.engine.PointStatus;
import feedwitness.engine.TypedOutcome;
import feedwitness.engine.TypedReading;
import feedwitness.ledger.History;
import feedwitness.measurement.Measurement;
import feedwitness.publish.access.Access;
import feedwitness.publish.access.Caller;
import feedwitness.quantity.PointName;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import io.javalin.router.Endpoint;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The addresses of the interface and what each answers. */
final class Routes {
  static final String API = "/api/v1";

  private final LiveView live;
  private final History history;
  private final OpenHours hours;
  private final SetupRoutes setup;
  private final StreamRoute stream;
  private final ExplainRoute explain;
  private final DataRoutes data;
  private final MessageRoutes messages;
  private final AccessRoutes accessRoutes;
  private final Access access;
  private final FeedRoutes feed = new FeedRoutes();

  Routes(Desks desks, Access access, OpenHours hours, Streams streams) {
    this.live = desks.live();
    this.history = desks.history();
    this.hours = hours;
    this.setup = new SetupRoutes(desks.probes(), streams);
    this.stream = new StreamRoute(streams, access);
    this.explain = new ExplainRoute(live, history);
    this.data = new DataRoutes(live, history, desks.data(), hours);
    this.messages = new MessageRoutes(desks.messages());
    this.access = access;
    this.accessRoutes = new AccessRoutes(access);
  }

  List<Endpoint> all() {
    return List.of(
        get("/health", this::health),
        get(API + "/site", this::site),
        get(API + "/points", this::points),
        get(API + "/points/{name}", this::point),
        get(API + "/points/{name}/measurements", this::measurements),
        get(API + "/points/{name}/explain", this::explain),
        post(API + "/points/{name}/readings", this::type),
        post(API + "/points/{name}/imports", data::take),
        get(API + "/export", data::export),
        post(API + "/backup", data::backup),
        get(API + "/stream", stream),
        get(API + "/setup/ports", setup::ports),
        get(API + "/setup/profiles", setup::profiles),
        post(API + "/setup/listen", setup::listen),
        post(API + "/setup/points", setup::save),
        get(API + "/messages", messages::state),
        post(API + "/messages/test", messages::test),
        get(API + "/access", accessRoutes::self),
        get(API + "/access/devices", accessRoutes::devices),
        post(API + "/access/codes", accessRoutes::offer),
        post(Turnstile.PAIR, accessRoutes::pair),
        post(API + "/access/devices/{device}/revoke", accessRoutes::revoke),
        post(Turnstile.LEAVE, accessRoutes::leave),
        get(API + "/fertilizers", feed::fertilizers),
        question(Turnstile.MIX, feed::mix),
        get(API + "/openapi.json", Routes::openApi));
  }

  private Endpoint get(String path, Handler handler) {
    return new Endpoint(
        HandlerType.GET, path, context -> hours.during(() -> handler.handle(context)));
  }

  /**
   * The body is read before work begins: a client that trickles it must not hold up a stop. Who did
   * it is put on record, whatever came of it.
   */
  private Endpoint post(String path, Handler handler) {
    return new Endpoint(
        HandlerType.POST,
        path,
        context -> {
          Body.receive(context);
          hours.during(() -> audited(context, path, handler));
        });
  }

  /** A question too long for an address: changes nothing, so nothing goes on record. */
  private Endpoint question(String path, Handler handler) {
    return new Endpoint(
        HandlerType.POST,
        path,
        context -> {
          Body.receive(context);
          hours.during(() -> handler.handle(context));
        });
  }

  private void audited(Context context, String path, Handler handler) throws Exception {
    int status = 500;
    try {
      handler.handle(context);
      status = context.statusCode();
    } catch (ProblemException e) {
      status = e.problem().status();
      throw e;
    } finally {
      note(context, path, status);
    }
  }

  /** A code that somebody unknown got wrong has no author; the log has it. */
  private void note(Context context, String path, int status) {
    Optional<Caller> caller = Callers.found(context);
    if (caller.isPresent()) {
      String subject = context.pathParamMap().values().stream().findFirst().orElse("");
      access.audit().note(caller.get(), "POST " + path, subject, status, Callers.address(context));
    }
  }

  private void health(Context context) {
    Answers.json(context, HealthJson.of(live.health(), access.trouble(), live.now()));
  }

  private void site(Context context) {
    Answers.json(context, SiteJson.of(live.site()));
  }

  private void points(Context context) {
    Answers.json(context, PointMapping.map(live.points(), live.now()));
  }

  private void point(Context context) {
    Answers.json(context, PointMapping.map(named(context), live.now()));
  }

  private void measurements(Context context) {
    PointName name = named(context).point().name();
    CourseQuery query = CourseQuery.read(name, context.queryParamMap(), live.now());
    Answers.json(
        context,
        CourseJson.of(
            query, history.course(query.point(), query.from(), query.to(), query.buckets())));
  }

  private void explain(Context context) {
    explain.explain(context, named(context).point().name());
  }

  private void type(Context context) {
    PointStatus before = named(context);
    PointName name = before.point().name();
    TypedReading reading = TypedRequest.read(name, Body.object(context));
    TypedOutcome outcome = live.type(reading);
    if (outcome instanceof TypedOutcome.Refused refused) {
      throw Problem.field(422, refused.field(), refused.message()).exception();
    }
    Measurement measurement = ((TypedOutcome.Accepted) outcome).measurement();
    PointStatus after = Statuses.with(before, measurement);
    context.status(201).header("Location", API + "/points/" + name.text());
    Answers.json(context, PointMapping.map(after, live.now()));
  }

  private PointStatus named(Context context) {
    String name = context.pathParam("name");
    Optional<PointStatus> point =
        PointName.isValid(name) ? live.point(new PointName(name)) : Optional.empty();
    return point.orElseThrow(
        () ->
            Problem.of(
                    404,
                    "there is no measuring point %s; there are: %s"
                        .formatted(
                            Quoted.of(name),
                            live.site().points().stream()
                                .map(p -> p.name().text())
                                .collect(Collectors.joining(", "))))
                .exception());
  }

  private static void openApi(Context context) throws IOException {
    context.header("Cache-Control", "no-cache");
    Answers.write(
        context,
        Json.MEDIA_TYPE,
        ClasspathFiles.read("feedwitness/publish/openapi.json").orElseThrow());
  }
}
