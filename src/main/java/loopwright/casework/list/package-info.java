/**
 * What has to be bought and made for a vehicle's wiring, worked out from the model: wire to cut,
 * terminals, fuses, relays, looms, labels. Data and words; how it is printed or saved is for
 * others.
 */
package loopwright.casework.list;
