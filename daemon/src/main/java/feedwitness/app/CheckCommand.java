package feedwitness.app;

import feedwitness.publish.CheckText;
import feedwitness.publish.RemoteService;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Leads through a check from a terminal. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    header = "Checks a probe or meter in standard solutions.",
    description = {
      "%nDEED is one of:",
      "",
      "  status [POINT]   which checks are due, or how one stands",
      "  start POINT      begin; name the bottles with --standard low --standard high",
      "  standard POINT   rinsed and in the beaker: wait until it has come to rest",
      "  other-bottle POINT  it was in another bottle; that-bottle POINT: it is the one named",
      "  clean POINT      it has been cleaned; the next round begins",
      "  adjust POINT     use the correction that was worked out; asks for --yes",
      "  adjusted POINT   the instrument was adjusted by its own means",
      "  finish POINT     end the check",
      "  abandon POINT    give it up; what was measured stays on record",
      "  returned POINT   the probe is back in its place",
      "  undo POINT       take the last adjustment back; asks for --yes",
      "  replaced POINT   another probe or cell hangs there, say with --note which; asks for --yes",
      "  sample POINT     a sample beside it, measured with a checked meter; needs --with,",
      "                   --reading (at 25 C) and --temperature",
      "  thermometer POINT  a reference thermometer beside it; needs --with and --temperature",
      "  log              the season's log as CSV",
      "",
      "POINT is a measuring point, or meter/NAME for a handheld meter. Asks the running service.%n"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done",
      "1:refused, or no service answers; the reason is printed",
      "2:an option or the configuration cannot be used"
    })
@SuppressWarnings("NullAway.Init") // picocli fills the fields before call()
final class CheckCommand implements Callable<Integer> {
  private static final int TRIES = 1200;
  private static final long PAUSE_MILLIS = 1000;
  private static final Map<String, String> STEPS =
      Map.of(
          "other-bottle", "wrong-bottle",
          "that-bottle", "really-that",
          "clean", "cleaned",
          "adjust", "adjust",
          "adjusted", "adjusted-by-instrument",
          "finish", "finish",
          "abandon", "abandon",
          "returned", "returned",
          "replaced", "replaced",
          "undo", "undo");

  /** What has to be wanted, and what it does. */
  private static final Map<String, String> CHANGES =
      Map.of(
          "adjust", "readings from now on change",
          "undo", "readings from now on change",
          "replaced", "no adjustment is used from now on, chart and interval begin anew");

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "DEED", description = "What to do.")
  private String deed;

  @Parameters(index = "1", arity = "0..1", paramLabel = "POINT", description = "At what.")
  private @Nullable String subject;

  @Option(
      names = "--standard",
      paramLabel = "NAME",
      description = "A bottle on the shelf; give it twice, weaker and stronger.")
  private List<String> standards = new ArrayList<>();

  @Option(
      names = "--who",
      paramLabel = "NAME",
      description = "Who does it; the name of the account unless given.")
  private @Nullable String who;

  @Option(names = "--note", paramLabel = "TEXT", description = "How it was cleaned, or why.")
  private String note = "";

  @Option(
      names = "--temperature",
      paramLabel = "C",
      description = "What a thermometer in the beaker or beside the probe says, degrees Celsius.")
  private double celsius = Double.NaN;

  @Option(
      names = "--reading",
      paramLabel = "MS",
      description = "What a meter shows at rest, mS/cm; needs --temperature.")
  private double reading = Double.NaN;

  @Option(
      names = "--with",
      paramLabel = "NAME",
      description = "Which meter the sample was measured with, or which thermometer it is.")
  private String with = "";

  @Option(
      names = "--accuracy",
      paramLabel = "K",
      description = "What the thermometer may be off by, kelvin. Default: 0.5.")
  private double accuracy = Double.NaN;

  @Option(
      names = "--yes",
      description = "Objections were read; begin, adjust, undo or replace all the same.")
  private boolean yes;

  @Mixin private Whereabouts whereabouts;

  @Override
  public Integer call() {
    return Asking.service(spec, whereabouts, "check", this::ask);
  }

  private void ask(RemoteService service, PrintWriter out) throws IOException {
    if (deed.equals("log")) {
      try (InputStream log = service.checkLog()) {
        out.print(new String(log.readAllBytes(), StandardCharsets.UTF_8));
      }
      return;
    }
    String at = subject;
    if (deed.equals("status") && at == null) {
      service.checks().forEach(out::println);
      return;
    }
    if (at == null) {
      throw new IOException(
          "say at which point, for example: feedwitness check %s tank".formatted(deed));
    }
    standing(service, at, out).lines().forEach(out::println);
  }

  private CheckText.Standing standing(RemoteService service, String at, PrintWriter out)
      throws IOException {
    return switch (deed) {
      case "status" -> service.check(at);
      case "start" -> service.beginCheck(at, name(), standards, yes);
      case "standard" -> measure(service, at, out);
      case "sample" -> service.compareCheck(at, name(), "grab-sample", compared());
      case "thermometer" -> service.compareCheck(at, name(), "thermometer", compared());
      default -> step(service, at);
    };
  }

  private CheckText.Standing step(RemoteService service, String at) throws IOException {
    String step = STEPS.getOrDefault(deed, "");
    if (step.isEmpty()) {
      throw new IOException(
          "there is no '%s'; there are status, start, standard, other-bottle, that-bottle, clean, adjust, adjusted, finish, abandon, returned, undo, replaced, sample, thermometer and log"
              .formatted(deed));
    }
    if (!yes && CHANGES.containsKey(deed)) {
      service.check(at).lines().forEach(spec.commandLine().getOut()::println);
      throw new IOException(CHANGES.get(deed) + "; give --yes to do it");
    }
    return service.stepCheck(at, name(), step, Map.of("note", note));
  }

  /** Rinsed and immersed, then waits until the probe has come to rest or somebody must decide. */
  private CheckText.Standing measure(RemoteService service, String at, PrintWriter out)
      throws IOException {
    CheckText.Standing now = service.check(at);
    int before = now.results();
    if (now.phase().equals("rinse")) {
      now = service.stepCheck(at, name(), "rinsed", Map.of());
    }
    if (now.phase().equals("immerse")) {
      now = service.stepCheck(at, name(), "immersed", Map.of());
    }
    if (!Double.isNaN(celsius)) {
      now = typed(service, at);
    }
    for (int i = 0; i < TRIES && now.phase().equals("settling") && now.results() == before; i++) {
      if (i % 15 == 0) {
        out.println(now.lines().get(Math.max(0, now.lines().size() - 2)));
        out.flush();
      }
      pause();
      now = service.check(at);
    }
    return now;
  }

  private CheckText.Standing typed(RemoteService service, String at) throws IOException {
    Map<String, Object> more = new HashMap<>(Map.of("temperature_c", celsius));
    if (Double.isNaN(reading)) {
      return service.stepCheck(at, name(), "temperature", more);
    }
    more.put("conductivity_mS_cm", reading);
    return service.stepCheck(at, name(), "reading", more);
  }

  private Map<String, Object> compared() {
    Map<String, Object> more = new HashMap<>(Map.of("name", with));
    put(more, "conductivity25_mS_cm", reading);
    put(more, "temperature_c", celsius);
    put(more, "accuracy_k", accuracy);
    return more;
  }

  private static void put(Map<String, Object> more, String field, double number) {
    if (!Double.isNaN(number)) {
      more.put(field, number);
    }
  }

  private static void pause() throws IOException {
    try {
      Thread.sleep(PAUSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }

  private String name() {
    String given = who;
    return given == null || given.isBlank() ? System.getProperty("user.name", "somebody") : given;
  }
}
