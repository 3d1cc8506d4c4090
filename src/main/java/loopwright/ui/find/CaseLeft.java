package loopwright.ui.find;

import javafx.event.Event;
import javafx.event.EventType;

/** The person leaves the case for a new complaint. */
final class CaseLeft extends Event {
  private static final long serialVersionUID = 1L;
  static final EventType<CaseLeft> TYPE = new EventType<>(Event.ANY, "CASE_LEFT");

  CaseLeft() {
    super(TYPE);
  }
}
