package feedwitness.publish;

import feedwitness.publish.access.Access;
import feedwitness.publish.access.Caller;
import feedwitness.publish.access.Device;
import feedwitness.publish.access.Devices;
import feedwitness.publish.access.PairingDesk;
import feedwitness.publish.access.PairingOutcome;
import feedwitness.publish.access.Role;
import io.javalin.http.Context;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Pairing of devices, and shutting them out. */
final class AccessRoutes {
  private static final int LONGEST_CODE = 40;
  private static final int LONGEST_SENT_NAME = 200;

  private final Access access;

  AccessRoutes(Access access) {
    this.access = access;
  }

  void self(Context context) {
    Answers.json(
        context,
        AccessJson.Self.of(
            Callers.of(context), access.settings().open(), address(context).orElse(null)));
  }

  void offer(Context context) {
    BodyFields fields = new BodyFields(Body.object(context));
    Optional<Role> role = fields.oneOf("role", roles());
    fields.finish();
    if (!access.settings().open()) {
      throw Problem.of(
              409,
              "only this machine can open the page, so no other device can be paired; name an access-key-file in [web] of the configuration and listen on another address")
          .exception();
    }
    String code = access.pairing().offer(role.orElseThrow(), Callers.of(context));
    Optional<String> address = address(context);
    Optional<String> link = address.map(page -> page + "#pair/" + code);
    context.status(201);
    Answers.json(
        context,
        new AccessJson.Code(
            code,
            role.orElseThrow().code(),
            PairingDesk.validity().toSeconds(),
            address.orElse(null),
            link.orElse(null),
            link.map(AccessJson.Picture::of).orElse(null)));
  }

  private static Map<String, Role> roles() {
    Map<String, Role> roles = new LinkedHashMap<>();
    Arrays.stream(Role.values()).forEach(role -> roles.put(role.code(), role));
    return roles;
  }

  private Optional<String> address(Context context) {
    return PhoneAddress.of(access.settings(), context.req().getLocalPort());
  }

  /** The one thing a stranger may send. */
  void pair(Context context) {
    BodyFields fields = new BodyFields(Body.object(context));
    String code = fields.text("code", LONGEST_CODE);
    String name = fields.text("name", LONGEST_SENT_NAME);
    fields.finish();
    PairingOutcome outcome = access.pairing().redeem(code, name, Callers.address(context));
    if (outcome instanceof PairingOutcome.TooMany tooMany) {
      context.header("Retry-After", Long.toString(tooMany.left().toSeconds() + 1));
      throw Turnstile.tooMany(tooMany.left()).exception();
    }
    if (outcome instanceof PairingOutcome.Refused refused) {
      throw (refused.field().isEmpty()
              ? Problem.of(507, refused.message())
              : Problem.field(422, refused.field(), refused.message()))
          .exception();
    }
    PairingOutcome.Paired paired = (PairingOutcome.Paired) outcome;
    context.header("Set-Cookie", TokenCookie.set(access.settings(), paired.token()));
    Callers.remember(context, Caller.of(paired.device()));
    context.status(201);
    Answers.json(context, AccessJson.Paired.of(paired.device()));
  }

  void devices(Context context) {
    Caller caller = Callers.of(context);
    if (!caller.mayAct()) {
      throw Problem.of(403, "who may only look does not see which devices are paired").exception();
    }
    Answers.json(context, AccessJson.Paireds.of(access.devices(), caller));
  }

  void revoke(Context context) {
    new BodyFields(Body.object(context)).finish();
    String wanted = context.pathParam("device");
    Optional<Device> device = access.devices().find(wanted);
    if (device.isEmpty()) {
      throw Problem.of(
              404,
              "no device %s is paired; the list of devices says which are"
                  .formatted(Quoted.of(wanted)))
          .exception();
    }
    shutOut(context, device.get());
  }

  /** A device gives up its own token. */
  void leave(Context context) {
    new BodyFields(Body.object(context)).finish();
    Caller caller = Callers.of(context);
    Device own =
        access
            .devices()
            .find(caller.device())
            .orElseThrow(
                () -> Problem.of(409, "the desk is not paired and cannot leave").exception());
    context.header("Set-Cookie", TokenCookie.forget(access.settings()));
    shutOut(context, own);
  }

  private void shutOut(Context context, Device device) {
    Devices.Revocation done = access.devices().revoke(device.id(), Callers.of(context).name());
    if (done == Devices.Revocation.UNRECORDED) {
      throw Problem.of(
              507,
              "%s is shut out, but that could not be put on record: after a restart it would be let in again; see why recording is stopped, pair and revoke it again"
                  .formatted(Quoted.of(device.name())))
          .exception();
    }
    Answers.json(context, AccessJson.Paired.of(device));
  }
}
