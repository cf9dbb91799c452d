package org.benchtrail.seal.offline;

import org.benchtrail.core.integrity.TilePath;

/** Where an export keeps what the leaves seal: for each tile of leaves a file with a line for each of them. */
public final class ExportedRecords {
    /** Ending of a file that its writer had begun when it was cut off; it is no part of the export. */
    public static final String HALF_WRITTEN = ".partial-file";

    private ExportedRecords() {}

    /** Name of the file below the folder of the export. */
    public static String name(TilePath leaves) {
        return leaves.toString().replaceFirst("^tile/entries/", "records/");
    }
}
