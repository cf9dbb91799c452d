package org.benchtrail.core.diagnosis.path;

/** A state of the place in which some acts are never offered, whatever they would save. */
public enum Bar {
    /** The act would open or probe an outlet itself. */
    LIVE_MAINS,
    /** Degraded, rebuilding, striped, or nobody knows: nothing of an array is pulled, seated or swapped. */
    ARRAY_WITHOUT_REDUNDANCY,
    /** The drive may be failing, and its data are neither safe nor accepted as lost. */
    UNSAVED_DATA,
    /** A battery is swollen. */
    SWOLLEN
}
