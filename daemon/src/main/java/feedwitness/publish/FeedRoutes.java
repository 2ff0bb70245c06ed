package feedwitness.publish;

import feedwitness.feed.MixOutcome;
import feedwitness.feed.Mixer;
import feedwitness.solution.ConductivityModel;
import io.javalin.http.Context;

/** The feed sums. They change nothing, and a form half filled in is no error of the request. */
final class FeedRoutes {
  private final Mixer mixer = new Mixer(new ConductivityModel());

  void fertilizers(Context context) {
    Answers.write(
        context,
        Json.MEDIA_TYPE,
        MixJson.bytes(mixer.fertilizers().stream().map(FertilizerJson::of).toList()));
  }

  void mix(Context context) {
    MixOutcome outcome = mixer.mix(MixJson.fields(Body.object(context)));
    context.header("Cache-Control", "no-store");
    Answers.write(context, Json.MEDIA_TYPE, MixJson.bytes(MixJson.Answer.of(outcome)));
  }
}
