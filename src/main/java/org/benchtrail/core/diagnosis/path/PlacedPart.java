package org.benchtrail.core.diagnosis.path;

/**
 * Where a part of a cause sits.
 *
 * @param part its id
 * @param cause id of the cause that it is a part of
 * @param segment id of the segment; empty for a listed cause that no segment names
 * @param isListed an entry of the catalogue; else it stands for whatever nobody listed there
 * @param share of the part in its cause; the parts of a cause sum to 1
 * @param seating whether seating anew cures it
 * @param survives whether a good spare does not cure it
 */
record PlacedPart(
        String part, String cause, String segment, boolean isListed, double share, boolean seating, boolean survives) {}
