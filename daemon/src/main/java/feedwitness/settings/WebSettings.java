package feedwitness.settings;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * How others reach the page.
 *
 * @param accessKeyFile absolute; without it the page stays on this machine
 * @param names by which the service is called, lower case, without port
 * @param certificate shown to browsers; without it the service speaks plain HTTP
 * @param behindProxy whether a reverse proxy that ends TLS stands before the service
 */
public record WebSettings(
    Optional<Path> accessKeyFile,
    List<String> names,
    Optional<CertificatePaths> certificate,
    boolean behindProxy) {
  /** The page stays on this machine. */
  public static final WebSettings NONE =
      new WebSettings(Optional.empty(), List.of(), Optional.empty(), false);

  public WebSettings {
    names = List.copyOf(names);
  }

  /** Both absolute. */
  public record CertificatePaths(Path chain, Path key) {}
}
