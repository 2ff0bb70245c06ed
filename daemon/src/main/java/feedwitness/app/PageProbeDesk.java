package feedwitness.app;

import feedwitness.acquire.PortPlan;
import feedwitness.acquire.ProbePlan;
import feedwitness.engine.ProbeDesk;
import feedwitness.profile.DeviceProfile;
import feedwitness.profile.InstrumentFacts;
import feedwitness.profile.Protocol;
import feedwitness.quantity.LinkAddress;
import feedwitness.quantity.PointName;
import feedwitness.settings.Config;
import feedwitness.settings.ConfigFiles;
import feedwitness.settings.ConfigOutcome;
import feedwitness.settings.GeneratedConfig;
import feedwitness.settings.GeneratedPoint;
import feedwitness.settings.Problem;
import feedwitness.settings.ProfileShelf;
import feedwitness.wire.PortCatalog.PortInfo;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** Sets up probes from the page: lists, listens, writes the generated file, reloads. */
final class PageProbeDesk implements ProbeDesk {
  /** Key of the configuration → field of the page's form. */
  private static final Map<String, String> FIELDS =
      Map.of(
          "port", "link",
          "conductivity-unit", "conductivity_unit",
          "instrument-compensates", "compensates",
          "percent-per-kelvin", "percent_per_kelvin");

  private final ConfigFiles files;
  private final Wiring.Surroundings around;
  private final Consumer<Config> reload;

  PageProbeDesk(ConfigFiles files, Wiring.Surroundings around, Consumer<Config> reload) {
    this.files = files;
    this.around = around;
    this.reload = reload;
  }

  @Override
  public List<PortCandidate> ports() {
    return around.catalog().list().stream().map(PageProbeDesk::candidate).toList();
  }

  private static PortCandidate candidate(PortInfo port) {
    return new PortCandidate(port.bestPath(), port.description(), port.mayOpen(), port.remedy());
  }

  @Override
  public List<ProfileChoice> profiles() {
    return ProfileShelf.read(files.profiles()).all().stream()
        .map(
            profile ->
                new ProfileChoice(
                    profile.name(),
                    profile.title(),
                    profile.protocol() instanceof Protocol.Modbus,
                    profile.instrument().compensation() == InstrumentFacts.Compensation.TO_25,
                    profile.fields().conductivityUnit().symbol()))
        .toList();
  }

  @Override
  public Preview listen(LinkAddress link, String profile, int unit, Duration howLong) {
    Optional<DeviceProfile> known = ProfileShelf.read(files.profiles()).find(profile);
    if (known.isEmpty()) {
      return new Preview("there is no device profile '%s'".formatted(profile), List.of());
    }
    int address = known.get().protocol() instanceof Protocol.Modbus ? Math.max(1, unit) : 0;
    ListeningLog log = new ListeningLog();
    new Listening(
            new PortPlan(
                link,
                known.get().serial(),
                List.of(new ProbePlan(new PointName("preview"), known.get(), address))),
            around.opener(),
            log)
        .listen(howLong);
    return log.preview();
  }

  @Override
  public synchronized SaveOutcome save(ProbeDraft draft) {
    Optional<GeneratedPoint.Probe> probe =
        draft.handTyped()
            ? Optional.empty()
            : Optional.of(
                new GeneratedPoint.Probe(
                    draft.link(),
                    draft.profile(),
                    draft.unit(),
                    Optional.of(draft.conductivityUnit()).filter(unit -> !unit.isBlank()),
                    Optional.of(draft.compensates())));
    ConfigOutcome outcome =
        GeneratedConfig.save(
            files,
            new GeneratedPoint(
                draft.name(), draft.title(), draft.place(), probe, draft.compensation()));
    if (outcome instanceof ConfigOutcome.Faulty faulty) {
      return new SaveOutcome.Refused(faulty.problems().stream().map(PageProbeDesk::field).toList());
    }
    reload.accept(((ConfigOutcome.Read) outcome).config());
    return new SaveOutcome.Saved(files.generated().toString());
  }

  private static FieldProblem field(Problem problem) {
    return new FieldProblem(
        FIELDS.getOrDefault(problem.key(), problem.key()),
        problem.message() + "; " + problem.remedy());
  }
}
