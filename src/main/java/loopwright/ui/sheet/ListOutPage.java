package loopwright.ui.sheet;

import javafx.scene.Node;
import loopwright.casework.sheet.SheetStore;
import loopwright.ui.Texts;
import loopwright.ui.wiring.WiringDesk;
import loopwright.ui.wiring.WiringPage;

/** Writes the vehicle's wire list or pinouts for a spreadsheet. */
public final class ListOutPage implements WiringPage {
  private final SheetStore store;
  private ListOutView view;

  /**
   * Makes the page.
   *
   * @param store where lists go to
   */
  public ListOutPage(SheetStore store) {
    this.store = store;
  }

  @Override
  public String title() {
    return Texts.of("listOut.title");
  }

  @Override
  public String key() {
    return "Ctrl+E";
  }

  @Override
  public Needs needs() {
    return Needs.VEHICLE;
  }

  @Override
  public Node open(WiringDesk desk) {
    view = new ListOutView(new ListOutViewModel(store, desk.worker(), desk.vehicle()), desk);
    return view;
  }

  @Override
  public void takeFocus() {
    view.takeFocus();
  }
}
