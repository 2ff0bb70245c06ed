package feedwitness.publish;

import feedwitness.publish.message.MessageDesk;
import feedwitness.publish.message.MessageDesk.TestOutcome;
import io.javalin.http.Context;
import java.util.List;

/** How people are reached, and the button that tries it. */
final class MessageRoutes {
  private final MessageDesk desk;

  MessageRoutes(MessageDesk desk) {
    this.desk = desk;
  }

  void state(Context context) {
    Answers.json(context, MessagesJson.of(desk.state()));
  }

  /** How it went is asked for afterwards: a mail server may take a minute to answer. */
  void test(Context context) {
    new BodyFields(Body.object(context)).finish();
    TestOutcome outcome = desk.test();
    if (outcome instanceof TestOutcome.Refused refused) {
      throw Problem.of(409, refused.why()).exception();
    }
    context.status(202).header("Location", Routes.API + "/messages");
    Answers.json(context, new Started(((TestOutcome.Started) outcome).channels()));
  }

  /** Where test messages are on their way. */
  record Started(List<String> channels) {
    Started {
      channels = List.copyOf(channels);
    }
  }
}
