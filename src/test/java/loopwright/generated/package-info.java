/** Made-up inputs from seeds, for whatever reads what others wrote. */
package loopwright.generated;
