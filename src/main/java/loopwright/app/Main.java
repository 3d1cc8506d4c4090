package loopwright.app;

import javafx.application.Application;

/**
 * Starts Loopwright. It does not extend {@link Application} itself, because Java refuses to launch
 * such a class when JavaFX is on the class path.
 */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    if (args.length > 0) {
      System.out.println("not ready");
      return;
    }
    Application.launch(LoopwrightApp.class);
  }
}
