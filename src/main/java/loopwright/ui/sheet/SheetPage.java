package loopwright.ui.sheet;

import javafx.scene.Node;
import loopwright.casework.sheet.SheetStore;
import loopwright.ui.Texts;
import loopwright.ui.wiring.WiringDesk;
import loopwright.ui.wiring.WiringPage;

/** Takes a wire list or a pinout list from a spreadsheet. */
public final class SheetPage implements WiringPage {
  private final SheetStore store;
  private SheetView view;

  /**
   * Makes the page.
   *
   * @param store where lists come from
   */
  public SheetPage(SheetStore store) {
    this.store = store;
  }

  @Override
  public String title() {
    return Texts.of("sheet.title");
  }

  @Override
  public String key() {
    return "Ctrl+I";
  }

  @Override
  public Needs needs() {
    return Needs.VEHICLE;
  }

  @Override
  public Node open(WiringDesk desk) {
    SheetViewModel model = new SheetViewModel(store, desk.worker(), desk::vehicle);
    view = new SheetView(model, desk);
    return view;
  }

  @Override
  public void takeFocus() {
    view.takeFocus();
  }
}
