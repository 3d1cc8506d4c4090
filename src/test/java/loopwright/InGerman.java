package loopwright;

import loopwright.model.Language;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Lets a test speak German, and the tests after it what they spoke before. */
public final class InGerman implements BeforeAllCallback, BeforeEachCallback, AfterAllCallback {
  private Language before;

  @Override
  public void beforeAll(ExtensionContext context) {
    before = Language.inUse();
    Language.use(Language.GERMAN);
  }

  @Override
  public void beforeEach(ExtensionContext context) {
    Language.use(Language.GERMAN);
  }

  @Override
  public void afterAll(ExtensionContext context) {
    Language.use(before);
  }
}
