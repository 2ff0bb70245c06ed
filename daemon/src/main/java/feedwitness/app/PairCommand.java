package feedwitness.app;

import feedwitness.publish.RemoteService;
import feedwitness.publish.access.QrPicture;
import feedwitness.publish.access.Role;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Shows a code that lets one phone in. */
@Command(
    name = "pair",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Shows a code that lets one phone or other device in.",
    description =
        "%nOpen the page on the phone, type the code once, and it stays paired until it is shut out"
            + " with 'feedwitness devices --shut-out NAME'. Asks the running service.%n",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the code is shown",
      "1:there is none; the reason is printed",
      "2:an option or the configuration cannot be used"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class PairCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private Whereabouts whereabouts;

  @Option(
      names = "--see-only",
      description = "The device may look at everything and change nothing.")
  private boolean seeOnly;

  @Override
  public Integer call() {
    return Asking.service(spec, whereabouts, "pair", this::show);
  }

  private void show(RemoteService service, PrintWriter out) throws IOException {
    RemoteService.PairingOffer offer = service.offerCode(seeOnly ? Role.SEE : Role.SEE_AND_ACT);
    if (!offer.link().isEmpty()) {
      out.println(new QrPicture(offer.link()).text());
    }
    out.printf(
        "Code   %s %s   (good for one device and %d minutes)%n",
        offer.code().substring(0, 4), offer.code().substring(4), offer.validity().toMinutes());
    out.printf(
        "Page   %s%n",
        offer.address().isEmpty()
            ? "by the name of this machine; give it in [web] names to have it shown here"
            : offer.address());
    out.println(
        seeOnly ? "The device may look and change nothing." : "The device may look and act.");
  }
}
