package loopwright.ui.explain;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import loopwright.casework.explain.ExplainDesk;
import loopwright.casework.explain.ExplainDesk.Entry;
import loopwright.casework.explain.Explained;
import loopwright.ui.Worker;

/** Which pages are listed, which one is open, and how its controls stand. */
public final class ExplainViewModel {
  private final ExplainDesk desk;
  private final Worker worker;
  private final StringProperty search = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<List<Entry>> entries;
  private final ReadOnlyObjectWrapper<Optional<Explained>> page =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyStringWrapper failure = new ReadOnlyStringWrapper("");
  private final Map<String, String> set = new TreeMap<>();
  private String topic = "";
  private int asked;

  /**
   * Lists all pages.
   *
   * @param worker solves, in a queue of its own
   */
  public ExplainViewModel(ExplainDesk desk, Worker worker) {
    this.desk = desk;
    this.worker = worker;
    entries = new ReadOnlyObjectWrapper<>(desk.find(""));
    search.addListener(o -> entries.set(desk.find(search.get())));
  }

  /** What is looked for; the list follows it. */
  public StringProperty searchProperty() {
    return search;
  }

  /** The pages that have it. */
  public ReadOnlyObjectProperty<List<Entry>> entriesProperty() {
    return entries.getReadOnlyProperty();
  }

  /** The open page as its controls stand. */
  public ReadOnlyObjectProperty<Optional<Explained>> pageProperty() {
    return page.getReadOnlyProperty();
  }

  /** Why no page is shown. */
  public ReadOnlyStringProperty failureProperty() {
    return failure.getReadOnlyProperty();
  }

  /** Opens a page as it stands at first; one that is open stays as it was left. */
  public void open(String id) {
    if (!id.equals(topic)) {
      topic = id;
      set.clear();
      solve();
    }
  }

  /** Opens the page so many places further in the list. */
  public void step(int by) {
    List<Entry> listed = entries.get();
    if (!listed.isEmpty()) {
      int at = listed.stream().map(Entry::id).toList().indexOf(topic);
      open(listed.get(Math.max(0, Math.min(listed.size() - 1, at + by))).id());
    }
  }

  /** Moves a control of the open page. */
  public void move(String control, String stop) {
    if (!stop.equals(set.put(control, stop))) {
      solve();
    }
  }

  private void solve() {
    int now = ++asked;
    String id = topic;
    Map<String, String> stops = Map.copyOf(set);
    worker.run(
        () -> desk.open(id, stops),
        solved -> {
          if (now == asked) {
            failure.set("");
            page.set(Optional.of(solved));
          }
        },
        failed -> failure.set(String.valueOf(failed.getMessage())));
  }
}
