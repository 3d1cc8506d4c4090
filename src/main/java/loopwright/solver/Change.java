package loopwright.solver;

/** One change of a network: what a failure, a meter or a test lamp does to it. */
public sealed interface Change {

  /** An element gone. */
  record Remove(int element) implements Change {}

  /** An element with another in its place. */
  record Replace(int element, Element by) implements Change {}

  /** An element more. */
  record Add(Element element) implements Change {}
}
