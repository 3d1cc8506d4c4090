package loopwright.ui.shell;

import java.util.List;
import java.util.Objects;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import loopwright.casework.RulesElsewhere;
import loopwright.casework.RulesElsewhere.Own;
import loopwright.casework.RulesElsewhere.Rule;
import loopwright.ui.Texts;
import loopwright.ui.Worker;

/** Whether rules from elsewhere may run. Nothing of them runs before they are allowed. */
public final class RulesViewModel {

  /** How it stands. */
  public enum Stage {
    /** Nobody has allowed these rules yet. */
    ASKING,
    /** They are being compiled. */
    TAKING,
    /** They can't be run; why is told. */
    REFUSED
  }

  private final RulesElsewhere rules;
  private final List<Rule> all;
  private final Worker worker;
  private final Runnable go;
  private final ReadOnlyObjectWrapper<Stage> stage = new ReadOnlyObjectWrapper<>(Stage.ASKING);
  private final ReadOnlyStringWrapper told = new ReadOnlyStringWrapper("");

  /**
   * Begins with the question, or takes rules that were allowed before.
   *
   * @param go opens the program, with these rules if they were taken
   */
  public RulesViewModel(RulesElsewhere rules, Worker worker, Runnable go) {
    this.rules = Objects.requireNonNull(rules, "rules");
    this.all = rules.rules();
    this.worker = worker;
    this.go = go;
    if (rules.allowedBefore()) {
      allow();
    }
  }

  /** What differs from the program's own rules, a line each. */
  public List<String> differing() {
    return all.stream()
        .filter(r -> r.own() != Own.SAME)
        .map(r -> Texts.of("rules.row", r.own().word(), r.words()))
        .toList();
  }

  /** How many are the program's own. */
  public int same() {
    return (int) all.stream().map(Rule::own).filter(Own.SAME::equals).count();
  }

  /** Check sum of them all. */
  public String fingerprint() {
    return rules.fingerprint();
  }

  /** How it stands. */
  public ReadOnlyObjectProperty<Stage> stageProperty() {
    return stage.getReadOnlyProperty();
  }

  /** Why they can't be run; empty otherwise. */
  public ReadOnlyStringProperty toldProperty() {
    return told.getReadOnlyProperty();
  }

  /** The person allows them. */
  public void allow() {
    if (stage.get() == Stage.TAKING) {
      return;
    }
    stage.set(Stage.TAKING);
    worker.run(
        () -> {
          rules.take();
          return rules;
        },
        taken -> go.run(),
        failed -> {
          told.set(String.valueOf(failed.getMessage()));
          stage.set(Stage.REFUSED);
        });
  }

  /** The program's own run. */
  public void refuse() {
    if (stage.get() != Stage.TAKING) {
      go.run();
    }
  }
}
