package loopwright.app;

import java.util.List;
import javafx.application.Application;
import loopwright.cli.Cli;

/**
 * Starts Loopwright: without arguments, or with {@code --rules FOLDER} alone, the window, with
 * others a command. It does not extend {@link Application} itself, because Java refuses to launch
 * such a class when JavaFX is on the class path.
 */
public final class Main {
  private Main() {}

  /** Starts the window or a command. */
  public static void main(String[] args) {
    if (args.length > 0 && LoopwrightApp.rules(List.of(args)).isEmpty()) {
      System.exit(Cli.run(args, new Terminal()));
    }
    Application.launch(LoopwrightApp.class, args);
  }
}
