package loopwright.ui.starting;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import loopwright.casework.LoopView;
import loopwright.casework.Problem;
import loopwright.casework.pattern.Outcome;
import loopwright.model.VehicleCheck;
import loopwright.ui.LoopSource;
import loopwright.ui.Worker;

/** Works out previews off the window's thread; only the newest counts. */
final class PreviewMaker {
  /** What makes the outcome. */
  interface Work {
    Outcome make() throws Problem;
  }

  private final Worker worker;
  private final LoopSource loops;
  private final AtomicInteger newest = new AtomicInteger();
  private final ReadOnlyObjectWrapper<Preview> preview = new ReadOnlyObjectWrapper<>(Preview.NONE);

  PreviewMaker(Worker worker, LoopSource loops) {
    this.worker = worker;
    this.loops = loops;
  }

  ReadOnlyObjectProperty<Preview> previewProperty() {
    return preview.getReadOnlyProperty();
  }

  /** Works a preview out in place of any that isn't done. */
  void ask(Work work) {
    int mine = newest.incrementAndGet();
    worker.run(
        () -> mine == newest.get() ? made(work) : Preview.NONE,
        made -> {
          if (mine == newest.get()) {
            preview.set(made);
          }
        },
        failed -> {
          if (mine == newest.get()) {
            preview.set(
                new Preview(
                    Optional.empty(), Optional.empty(), String.valueOf(failed.getMessage())));
          }
        });
  }

  private Preview made(Work work) {
    try {
      Outcome outcome = work.make();
      Optional<LoopView> loop =
          outcome.circuits().isEmpty() || !VehicleCheck.check(outcome.vehicle()).isEmpty()
              ? Optional.empty()
              : loops.loop(outcome.vehicle(), outcome.circuits().keySet().iterator().next());
      return new Preview(Optional.of(outcome), loop, "");
    } catch (Problem e) {
      return new Preview(Optional.empty(), Optional.empty(), e.accepted());
    }
  }
}
