/** The Prove place: what of the vehicle is proven, and one thing to do now. */
package loopwright.ui.prove;
