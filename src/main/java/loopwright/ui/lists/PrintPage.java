package loopwright.ui.lists;

import java.nio.file.Path;
import java.util.Optional;
import javafx.scene.Node;
import loopwright.casework.PaperDesk;
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
    double hottest = desk.hottest().orElse(PaperDesk.USUAL_SURROUNDINGS);
    Prints.Plan plan = new Prints.Plan(desk.vehicle().orElseThrow(), hottest, desk.circuit());
    PrintViewModel model = new PrintViewModel(prints, plan, paper, folder, desk.worker().another());
    // Who comes from the paper check has come for its sheet.
    Prints.Sheet first = desk.hottest().isPresent() ? Prints.Sheet.CHECK : Prints.Sheet.MAKING;
    // The next time begins where this one ended.
    model.paperProperty().addListener((o, was, is) -> paper = is);
    model.folderProperty().addListener((o, was, is) -> folder = is);
    PrintView made =
        new PrintView(model, desk.emProperty(), first, () -> desk.close(Optional.empty()));
    view = Optional.of(made);
    return made;
  }

  @Override
  public void takeFocus() {
    view.ifPresent(PrintView::takeFocus);
  }
}
