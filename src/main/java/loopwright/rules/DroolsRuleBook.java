package loopwright.rules;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import loopwright.diagnosis.rulebook.RuleBook;
import org.drools.io.ByteArrayResource;
import org.drools.kiesession.rulebase.InternalKnowledgeBase;
import org.drools.kiesession.rulebase.KnowledgeBaseFactory;
import org.kie.api.KieBase;
import org.kie.api.io.Resource;
import org.kie.api.io.ResourceType;
import org.kie.internal.builder.CompositeKnowledgeBuilder;
import org.kie.internal.builder.KnowledgeBuilder;
import org.kie.internal.builder.KnowledgeBuilderConfiguration;
import org.kie.internal.builder.KnowledgeBuilderError;
import org.kie.internal.builder.KnowledgeBuilderFactory;
import org.kie.internal.builder.ResultSeverity;
import org.kie.internal.builder.conf.PropertySpecificOption;

/**
 * The rules of a folder, compiled once by Drools. Compiling takes a second or two: do it off the
 * window's thread. Afterwards the book may be shared by threads; each session belongs to one thread
 * at a time.
 */
public final class DroolsRuleBook implements RuleBook {

  /**
   * What every rule sees. It is put before the first line of each file, on that same line, so that
   * the lines in messages are those of the file.
   */
  private static final String HEAD =
      "package loopwright.rules.book;"
          + " import loopwright.diagnosis.*;"
          + " import loopwright.diagnosis.rulebook.Fact.*;"
          + " import loopwright.diagnosis.rulebook.Conclusion.*;"
          + " import loopwright.knowledge.Context;"
          + " import loopwright.model.PartKind;"
          + " import loopwright.rules.At;"
          + " import loopwright.rules.At.Tip;"
          + " import loopwright.rules.ClearsNothing;"
          + " import java.util.List;"
          + " import java.util.Set;"
          + " import function loopwright.rules.Trade.*; ";

  private final SortedMap<String, RuleFolder> rules;
  private final Locale locale;
  private final KieBase base;

  /**
   * Compiles rules.
   *
   * @param files the rules, see {@link RuleFiles#bundled()} and {@link RuleFiles#inFolder}
   * @param locale language of the words and of the numbers in them; where a rule has no words in
   *     it, the English ones are used
   * @throws RuleBookException with every defect in every file
   */
  public DroolsRuleBook(RuleFiles files, Locale locale) {
    this.locale = Objects.requireNonNull(locale, "locale");
    RuleReader reader = new RuleReader(files);
    this.rules = Collections.unmodifiableSortedMap(reader.read());
    List<RuleDefect> defects = new ArrayList<>(reader.defects());
    KnowledgeBuilder builder = compile(rules);
    for (KnowledgeBuilderError error : builder.getErrors()) {
      if (error.getSeverity() == ResultSeverity.ERROR) {
        defects.add(defect(error));
      }
    }
    if (!defects.isEmpty()) {
      throw new RuleBookException(new ArrayList<>(new TreeSet<>(defects)));
    }
    InternalKnowledgeBase compiled = KnowledgeBaseFactory.newKnowledgeBase();
    compiled.addPackages(builder.getKnowledgePackages());
    this.base = compiled;
  }

  private static KnowledgeBuilder compile(SortedMap<String, RuleFolder> rules) {
    KnowledgeBuilderConfiguration configuration =
        KnowledgeBuilderFactory.newKnowledgeBuilderConfiguration(
            new Properties(), DroolsRuleBook.class.getClassLoader());
    // Facts are never changed in place, so nothing need watch their properties.
    configuration.setOption(PropertySpecificOption.DISABLED);
    KnowledgeBuilder builder = KnowledgeBuilderFactory.newKnowledgeBuilder(configuration);
    CompositeKnowledgeBuilder batch = builder.batch();
    for (RuleFolder rule : rules.values()) {
      Resource resource =
          new ByteArrayResource((HEAD + rule.drl()).getBytes(StandardCharsets.UTF_8), "UTF-8")
              .setSourcePath(rule.path() + "/rule.drl");
      batch.add(resource, ResourceType.DRL);
    }
    try {
      batch.build();
    } catch (StackOverflowError e) {
      // The compiler descends into brackets and signs; nothing of it is used after this.
      throw new RuleBookException(List.of(new RuleDefect("rules", 1, RuleDefect.say("too-deep"))));
    }
    return builder;
  }

  private static RuleDefect defect(KnowledgeBuilderError error) {
    int line = 1;
    for (int each : error.getLines()) {
      line = Math.max(line, each);
    }
    String file = error.getResource() == null ? "rules" : error.getResource().getSourcePath();
    return new RuleDefect(file, line, error.getMessage().strip());
  }

  @Override
  public Session open() {
    return new DroolsSession(base.newKieSession(), locale);
  }

  @Override
  public int size() {
    return rules.size();
  }

  /** The ids of the rules of an area, in order. */
  public SortedSet<String> ids(Area area) {
    SortedSet<String> ids = new TreeSet<>();
    rules.forEach(
        (id, rule) -> {
          if (rule.note().area().equals(area.word())) {
            ids.add(id);
          }
        });
    return ids;
  }

  /**
   * {@inheritDoc}
   *
   * @throws IllegalArgumentException naming rule and key, if there is no such rule or text
   */
  @Override
  public String words(String rule, String key, List<Object> args) {
    String pattern =
        folder(rule)
            .text(locale.getLanguage(), key)
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "rule " + rule + " has no text '" + key + "'; it has " + keys(rule)));
    List<Object> ready = Words.of(args, Map.of(), locale);
    return RuleReader.format(pattern, locale).format(ready.toArray());
  }

  @Override
  public RuleNote note(String rule) {
    return folder(rule).note();
  }

  private Set<String> keys(String rule) {
    Set<String> keys = new HashSet<>();
    folder(rule).texts().values().forEach(texts -> keys.addAll(texts.keySet()));
    return new TreeSet<>(keys);
  }

  private RuleFolder folder(String rule) {
    RuleFolder folder = rules.get(rule);
    if (folder == null) {
      throw new IllegalArgumentException("there is no rule '" + rule + "'");
    }
    return folder;
  }
}
