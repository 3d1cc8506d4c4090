/**
 * Editing a vehicle without a screen: {@link loopwright.casework.edit.Edit Edits} are made on a
 * {@link loopwright.casework.edit.Workpiece}, which takes them back and makes them again without
 * limit; a {@link loopwright.casework.edit.VehicleStore} keeps the vehicle.
 */
package loopwright.casework.edit;
