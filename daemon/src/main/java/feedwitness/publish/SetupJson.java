package feedwitness.publish;

import com.fasterxml.jackson.annotation.JsonProperty;
import feedwitness.engine.ProbeDesk;
import java.util.List;

/** What setting up a probe needs to know. */
final class SetupJson {
  private SetupJson() {}

  /** A serial port. */
  record Port(String path, String description, boolean usable, String remark) {
    static Port of(ProbeDesk.PortCandidate port) {
      return new Port(port.path(), port.description(), port.usable(), port.remark());
    }
  }

  /** A device profile. */
  record Profile(
      String name,
      String title,
      @JsonProperty("needs_unit") boolean needsUnit,
      boolean compensates,
      @JsonProperty("conductivity_unit") String conductivityUnit) {
    static Profile of(ProbeDesk.ProfileChoice profile) {
      return new Profile(
          profile.name(),
          profile.title(),
          profile.needsUnit(),
          profile.compensates(),
          profile.conductivityUnit());
    }
  }

  /** What was heard on a port. */
  record Preview(String trouble, List<Heard> heard) {
    Preview {
      heard = List.copyOf(heard);
    }

    static Preview of(ProbeDesk.Preview preview) {
      return new Preview(preview.trouble(), preview.heard().stream().map(Heard::of).toList());
    }
  }

  /** One run of octets. */
  record Heard(String hex, String text, boolean understood, String verdict) {
    static Heard of(ProbeDesk.Heard heard) {
      return new Heard(heard.hex(), heard.text(), heard.understood(), heard.verdict());
    }
  }

  /** Where the configuration was written. */
  record Saved(String file) {}
}
