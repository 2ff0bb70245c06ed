package feedwitness.publish.access;

import java.net.InetAddress;
import java.util.Optional;

/**
 * How a request came.
 *
 * @param peer the other end of the connection
 * @param here this end of the connection
 * @param forwarded whether it says that somebody handed it on
 * @param nearest the address the nearest proxy says it came from, if it says so
 * @param loopbackName whether it calls the service by a name of this machine only
 */
public record Arrival(
    InetAddress peer,
    InetAddress here,
    boolean forwarded,
    Optional<InetAddress> nearest,
    boolean loopbackName) {}
