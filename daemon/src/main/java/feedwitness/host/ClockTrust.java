package feedwitness.host;

/** Whether the wall clock may be believed. Asked for every sample, by any thread. */
@FunctionalInterface
public interface ClockTrust {
  /** A clock that is right because somebody says so. */
  ClockTrust ALWAYS = () -> true;

  /** Once true it stays true until the service ends: a clock that was set keeps going. */
  boolean trusted();
}
