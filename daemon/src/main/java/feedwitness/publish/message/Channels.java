package feedwitness.publish.message;

import feedwitness.quantity.TimeSource;
import feedwitness.site.MessagePlan;
import feedwitness.site.WebhookRoute;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/** The channels of a plan. */
final class Channels {
  private final List<Channel> all = new ArrayList<>();

  Channels(MessagePlan plan, TimeSource clock) {
    this(plan, clock, Limits.USUAL, InetAddress::getAllByName);
  }

  Channels(MessagePlan plan, TimeSource clock, Limits limits, WebhookChannel.Resolver resolver) {
    plan.mail().ifPresent(route -> all.add(new MailChannel(route, limits, deadlines())));
    for (WebhookRoute route : plan.webhooks()) {
      all.add(new WebhookChannel(route, limits, clock, resolver));
    }
  }

  List<Channel> all() {
    return List.copyOf(all);
  }

  private static ScheduledThreadPoolExecutor deadlines() {
    ScheduledThreadPoolExecutor deadlines =
        new ScheduledThreadPoolExecutor(
            1,
            work -> {
              Thread made = new Thread(work, "message-deadline");
              made.setDaemon(true);
              return made;
            });
    deadlines.setRemoveOnCancelPolicy(true);
    deadlines.setKeepAliveTime(1, TimeUnit.SECONDS);
    deadlines.allowCoreThreadTimeOut(true);
    return deadlines;
  }
}
