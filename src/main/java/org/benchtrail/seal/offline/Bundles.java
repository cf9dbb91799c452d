package org.benchtrail.seal.offline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.benchtrail.core.integrity.EntryBundle;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.TilePath;

/** Leaves of an exported log, as its folder keeps them. */
final class Bundles {
    private Bundles() {}

    /** Those below a tile; none, which is a finding, if they cannot be read or are not as many as there have to be. */
    static List<Leaf> read(Path folder, TilePath path, VerifyReport report) {
        List<Leaf> leaves;
        try {
            leaves = EntryBundle.read(Files.readAllBytes(folder.resolve(path.toString())));
        } catch (IllegalArgumentException | IOException e) {
            report.found("leaves", path.toString(), "cannot be read: " + e.getMessage());
            return List.of();
        }
        if (leaves.size() != path.width()) {
            report.found("leaves", path.toString(), "has " + leaves.size() + " leaves, not " + path.width());
            return List.of();
        }
        return leaves;
    }
}
