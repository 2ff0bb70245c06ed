package feedwitness.publish;

import feedwitness.engine.ProbeDesk;
import feedwitness.engine.ProbeDesk.FieldProblem;
import feedwitness.engine.ProbeDesk.ProbeDraft;
import feedwitness.engine.ProbeDesk.SaveOutcome;
import io.javalin.http.Context;
import java.util.List;
import java.util.concurrent.Semaphore;

/** Setting up a probe from the page. */
final class SetupRoutes {
  /** Listening holds a thread for seconds; the others must stay free for the page. */
  private static final int MOST_LISTENERS = 2;

  private final ProbeDesk desk;
  private final Streams streams;
  private final Semaphore listeners = new Semaphore(MOST_LISTENERS);

  SetupRoutes(ProbeDesk desk, Streams streams) {
    this.desk = desk;
    this.streams = streams;
  }

  void ports(Context context) {
    Answers.json(context, desk.ports().stream().map(SetupJson.Port::of).toList());
  }

  void profiles(Context context) {
    Answers.json(context, desk.profiles().stream().map(SetupJson.Profile::of).toList());
  }

  void listen(Context context) {
    SetupRequest.Listen wanted = SetupRequest.Listen.read(Body.object(context));
    if (!listeners.tryAcquire()) {
      throw Problem.of(
              503,
              "%d ports are being listened to already; try again in 10 s".formatted(MOST_LISTENERS))
          .exception();
    }
    try {
      ProbeDesk.Preview preview =
          desk.listen(wanted.link(), wanted.profile(), wanted.unit(), wanted.howLong());
      Answers.json(context, SetupJson.Preview.of(preview));
    } finally {
      listeners.release();
    }
  }

  void save(Context context) {
    ProbeDraft draft = SetupRequest.draft(Body.object(context));
    SaveOutcome outcome = desk.save(draft);
    if (outcome instanceof SaveOutcome.Refused refused) {
      throw refusal(refused.problems()).exception();
    }
    streams.reset();
    context.status(201).header("Location", Routes.API + "/points/" + draft.name().text());
    Answers.json(context, new SetupJson.Saved(((SaveOutcome.Saved) outcome).file()));
  }

  private static Problem refusal(List<FieldProblem> problems) {
    List<Problem.FieldError> errors =
        problems.stream()
            .map(problem -> new Problem.FieldError(problem.field(), problem.message()))
            .toList();
    String detail =
        errors.isEmpty() ? "the point was not saved, no reason given" : errors.get(0).message();
    return new Problem(422, detail, errors);
  }
}
