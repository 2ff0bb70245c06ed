package feedwitness.publish;

import feedwitness.engine.AlarmDesk;
import feedwitness.engine.FeedingStatus;
import feedwitness.engine.Running;
import feedwitness.quantity.PointName;
import io.javalin.http.Context;
import java.util.Optional;

/** What is being fed. */
final class FeedingRoutes {
  private static final int LONGEST_NAME = 32;
  private static final int LONGEST_TITLE = 60;

  private final AlarmDesk desk;

  FeedingRoutes(AlarmDesk desk) {
    this.desk = desk;
  }

  void list(Context context) {
    Answers.json(
        context, new FeedingJson.ListJson(desk.feeding().stream().map(this::json).toList()));
  }

  void feed(Context context) {
    BodyFields fields = new BodyFields(Body.object(context));
    String who = fields.text("who", AlarmRoutes.LONGEST_WHO);
    Optional<PointName> point = point(fields);
    Optional<Running.What> what = fields.oneOf("what", Codes.all(Running.What.class));
    boolean named = what.filter(Running.What.STRENGTH::equals).isPresent();
    String strength =
        named
            ? fields.text("strength", LONGEST_NAME)
            : fields.optionalText("strength", LONGEST_NAME);
    fields.finish();
    answer(context, desk.feed(point.orElseThrow(), what.orElseThrow(), strength, who));
  }

  void level(Context context) {
    BodyFields fields = new BodyFields(Body.object(context));
    String who = fields.text("who", AlarmRoutes.LONGEST_WHO);
    Optional<PointName> point = point(fields);
    Optional<FeedingStatus.Answer> answer =
        fields.oneOf("answer", Codes.all(FeedingStatus.Answer.class));
    String title = fields.optionalText("title", LONGEST_TITLE);
    fields.finish();
    answer(context, desk.answer(point.orElseThrow(), answer.orElseThrow(), title, who));
  }

  private static Optional<PointName> point(BodyFields fields) {
    String name = fields.text("point", LONGEST_NAME);
    if (PointName.isValid(name)) {
      return Optional.of(new PointName(name));
    }
    if (!name.isBlank()) {
      fields.fault("point", "there is no point " + Quoted.of(name));
    }
    return Optional.empty();
  }

  private void answer(Context context, FeedingStatus.Outcome outcome) {
    if (outcome instanceof FeedingStatus.Outcome.Refused refused) {
      throw Problem.field(422, refused.field(), refused.message()).exception();
    }
    Answers.json(context, json(((FeedingStatus.Outcome.Taken) outcome).now()));
  }

  private FeedingJson json(FeedingStatus status) {
    return FeedingJson.of(status, desk.source(status.point().name()));
  }
}
