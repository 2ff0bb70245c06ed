package feedwitness.publish;

import feedwitness.alarm.AlarmKey;
import feedwitness.alarm.AlarmOutcome;
import feedwitness.alarm.Standing;
import feedwitness.alarm.State;
import feedwitness.engine.AlarmDesk;
import feedwitness.engine.LiveView;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Alarms: how they stand, and people's answers. */
final class AlarmRoutes {
  static final int LONGEST_WHO = 80;
  private static final int LONGEST_NOTE = 1000;
  private static final int MOST_MINUTES = 7 * 24 * 60;
  private static final AlarmKey FLOOD = new AlarmKey(AlarmKey.SERVICE, "alarm-flood");

  private final LiveView live;
  private final AlarmDesk desk;

  AlarmRoutes(LiveView live, AlarmDesk desk) {
    this.live = live;
    this.desk = desk;
  }

  void list(Context context) {
    boolean all = all(context.queryParamMap());
    List<Standing> standings =
        desk.alarms().stream()
            .filter(standing -> all || standing.state() != State.NORMAL || !standing.counts())
            .filter(standing -> all || standing.condition().suppressed().isEmpty())
            .sorted(AlarmJson.ORDER)
            .toList();
    Answers.json(
        context,
        new AlarmJson.ListJson(
            Numbers.time(live.now()),
            (int) standings.stream().filter(Standing::waits).count(),
            flood(),
            standings.stream().map(this::json).toList()));
  }

  private static boolean all(Map<String, List<String>> parameters) {
    List<Problem.FieldError> errors = new ArrayList<>();
    CourseQuery.refuseUnknown(parameters, List.of("all"), errors);
    List<String> all = parameters.getOrDefault("all", List.of("false"));
    if (all.size() != 1 || !all.get(0).matches("true|false")) {
      errors.add(new Problem.FieldError("all", "all is not true or false"));
    }
    if (!errors.isEmpty()) {
      throw new Problem(400, errors.get(0).message(), errors).exception();
    }
    return all.get(0).equals("true");
  }

  private AlarmJson.@Nullable FloodJson flood() {
    return desk.alarm(FLOOD)
        .filter(standing -> standing.state().active())
        .map(Standing::condition)
        .map(flood -> new AlarmJson.FloodJson((int) flood.value(), flood.words()))
        .orElse(null);
  }

  private AlarmJson json(Standing standing) {
    return AlarmJson.of(standing, live.site(), live.now());
  }

  void acknowledge(Context context) {
    Said said = Said.read(context, true);
    answer(context, desk.acknowledge(key(context), said.who(), said.note()));
  }

  void undo(Context context) {
    answer(context, desk.reopen(key(context), Said.read(context, false).who()));
  }

  void shelve(Context context) {
    BodyFields fields = new BodyFields(Body.object(context));
    String who = fields.text("who", LONGEST_WHO);
    String note = fields.optionalLines("note", LONGEST_NOTE);
    int minutes = fields.neededWhole("minutes", 1, MOST_MINUTES);
    fields.finish();
    answer(context, desk.shelve(key(context), Duration.ofMinutes(minutes), who, note));
  }

  void unshelve(Context context) {
    answer(context, desk.unshelve(key(context), Said.read(context, false).who()));
  }

  void outOfService(Context context) {
    Said said = Said.read(context, true);
    answer(context, desk.takeOut(key(context), said.who(), said.note()));
  }

  void inService(Context context) {
    Said said = Said.read(context, true);
    answer(context, desk.putBack(key(context), said.who(), said.note()));
  }

  private void answer(Context context, AlarmOutcome outcome) {
    if (outcome instanceof AlarmOutcome.Refused refused) {
      throw Problem.field(409, refused.field(), refused.message()).exception();
    }
    if (outcome instanceof AlarmOutcome.NoSuchAlarm unknown) {
      throw noSuch(unknown.key().text()).exception();
    }
    Answers.json(context, json(((AlarmOutcome.Done) outcome).now()));
  }

  private static AlarmKey key(Context context) {
    String subject = context.pathParam("subject");
    String kind = context.pathParam("kind");
    return Optional.of(subject)
        .filter(text -> AlarmKey.isValid(text, kind))
        .map(text -> new AlarmKey(text, kind))
        .orElseThrow(() -> noSuch(subject + "/" + kind).exception());
  }

  private static Problem noSuch(String key) {
    return Problem.of(
        404,
        "there is no alarm %s; %s/alarms lists those there are"
            .formatted(Quoted.of(key), Routes.API));
  }

  /** Who says something, and what. */
  private record Said(String who, String note) {
    static Said read(Context context, boolean withNote) {
      BodyFields fields = new BodyFields(Body.object(context));
      String who = fields.text("who", LONGEST_WHO);
      String note = withNote ? fields.optionalLines("note", LONGEST_NOTE) : "";
      fields.finish();
      return new Said(who, note);
    }
  }
}
