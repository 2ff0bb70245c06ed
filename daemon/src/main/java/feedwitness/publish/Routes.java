package feedwitness.publish;

import feedwitness.engine.AlarmDesk;
import feedwitness.engine.CheckBench;
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
import java.util.stream.Stream;

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
  private final AlarmDesk alarmDesk;
  private final AlarmRoutes alarms;
  private final JournalRoutes journal;
  private final FeedingRoutes feeding;
  private final FeedLineRoutes lines;
  private final AtomRoutes atom;
  private final MetricsRoute metrics;
  private final CheckBench bench;
  private final CheckRoutes checks;

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
    this.alarmDesk = desks.alarms();
    this.alarms = new AlarmRoutes(live, alarmDesk);
    this.journal = new JournalRoutes(live, alarmDesk, desks.evidence());
    this.feeding = new FeedingRoutes(alarmDesk);
    this.lines = new FeedLineRoutes(live, desks.lines(), desks.evidence());
    this.atom = new AtomRoutes(live, alarmDesk, desks.evidence());
    this.metrics = new MetricsRoute(live, alarmDesk);
    this.bench = desks.checks();
    this.checks = new CheckRoutes(live, bench);
  }

  List<Endpoint> all() {
    return Stream.of(measured(), watched(), checked()).flatMap(List::stream).toList();
  }

  private List<Endpoint> checked() {
    String one = API + "/checks/{kind}/{name}";
    return List.of(
        get(API + "/checks", checks::list),
        get(API + "/checks/export", checks::log),
        get(API + "/check-records/{id}", checks::record),
        get(one, checks::one),
        post(one + "/begin", checks::begin),
        post(one + "/step", checks::step),
        post(one + "/compare", checks::compare));
  }

  private List<Endpoint> watched() {
    String one = API + "/alarms/{subject}/{kind}";
    return List.of(
        get(API + "/alarms", alarms::list),
        post(one + "/acknowledge", alarms::acknowledge),
        post(one + "/undo", alarms::undo),
        post(one + "/shelve", alarms::shelve),
        post(one + "/unshelve", alarms::unshelve),
        post(one + "/out-of-service", alarms::outOfService),
        post(one + "/in-service", alarms::inService),
        get(API + "/journal", journal::list),
        post(API + "/journal", journal::write, Body.LARGE_OCTETS),
        get(API + "/journal/export", journal::export),
        get(API + "/journal/{number}", journal::entry),
        get(API + "/journal/{number}/photo", journal::photo),
        get(API + "/feeding", feeding::list),
        post(API + "/feeding", feeding::feed),
        post(API + "/feeding/level", feeding::level),
        get(FeedLineRoutes.PATH, lines::list),
        post(FeedLineRoutes.PATH + "/{name}/changes", lines::change),
        get(FeedLineRoutes.PATH + "/{name}/replay", lines::replay),
        get(AtomRoutes.PATH, atom::current),
        get(AtomRoutes.ARCHIVE + "{name}", atom::archive),
        get("/metrics", metrics::answer));
  }

  private List<Endpoint> measured() {
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
    return post(path, handler, Body.LIMIT_OCTETS);
  }

  private Endpoint post(String path, Handler handler, int limitOctets) {
    return new Endpoint(
        HandlerType.POST,
        path,
        context -> {
          Body.receive(context, limitOctets);
          hours.during(() -> audited(context, path, handler));
        });
  }

  /** A question too long for an address: changes nothing, so nothing goes on record. */
  private Endpoint question(String path, Handler handler) {
    return new Endpoint(
        HandlerType.POST,
        path,
        context -> {
          Body.receive(context, Body.LIMIT_OCTETS);
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
    Answers.json(context, PointMapping.map(live.points(), alarmDesk, live.now()));
  }

  private void point(Context context) {
    Answers.json(context, PointMapping.map(named(context), alarmDesk, live.now()));
  }

  private void measurements(Context context) {
    PointName name = named(context).point().name();
    CourseQuery query = CourseQuery.read(name, context.queryParamMap(), live.now());
    Answers.json(
        context,
        CourseJson.of(
            query,
            history.course(query.point(), query.from(), query.to(), query.buckets()),
            Corrections.of(name, bench.evidence())));
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
    Answers.json(context, PointMapping.map(after, alarmDesk, live.now()));
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
