package feedwitness.app;

import feedwitness.publish.RemoteService;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** How everything stands. */
@Command(
    name = "status",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Shows how everything stands: service, points, alarms.",
    description = "%nAsks the running service.%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:told",
      "1:no service answers; the reason is printed",
      "2:an option or the configuration cannot be used"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class StatusCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private Whereabouts whereabouts;

  @Override
  public Integer call() {
    return Asking.print(spec, whereabouts, RemoteService::status);
  }
}
