package loopwright.ui.lists;

import java.nio.file.Path;
import java.util.Optional;
import javafx.scene.Node;
import loopwright.ui.Texts;
import loopwright.ui.wiring.WiringDesk;
import loopwright.ui.wiring.WiringPage;

/** Print and lists, as a page of the places that show a vehicle. */
public final class PrintPage implements WiringPage {
  private final Prints prints;
  private Prints.Paper paper = Prints.Paper.A4;
  private String folder;
  private Optional<PrintView> view = Optional.empty();

  /**
   * The page.
   *
   * @param folder where files go until another folder is said
   */
  public PrintPage(Prints prints, Path folder) {
    this.prints = prints;
    this.folder = folder.toString();
  }

  @Override
  public String title() {
    return Texts.of("lists.title");
  }

  @Override
  public String key() {
    return "Ctrl+P";
  }

  @Override
  public Needs needs() {
    return Needs.TO_READ;
  }

  @Override
  public Node open(WiringDesk desk) {
    PrintViewModel model =
        new PrintViewModel(
            prints, desk.vehicle().orElseThrow(), paper, folder, desk.worker().another());
    // The next time begins where this one ended.
    model.paperProperty().addListener((o, was, is) -> paper = is);
    model.folderProperty().addListener((o, was, is) -> folder = is);
    PrintView made = new PrintView(model, desk.emProperty(), () -> desk.close(Optional.empty()));
    view = Optional.of(made);
    return made;
  }

  @Override
  public void takeFocus() {
    view.ifPresent(PrintView::takeFocus);
  }
}
