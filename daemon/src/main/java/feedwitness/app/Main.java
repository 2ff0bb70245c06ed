package feedwitness.app;

final class Main {
  private Main() {}

  public static void main(String[] arguments) {}
}
