package org.benchtrail.seal.offline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TilePath;
import org.jspecify.annotations.Nullable;

/**
 * All leaves of a log, beside the file of one ticket: only they show that the ticket has no further entry, and that the log goes on from
 * a head of another size.
 */
final class LeafList {
    private final Path folder;
    private final Checkpoint head;
    private final VerifyReport report;
    private final Frontier frontier = Frontier.empty();
    private long entries;

    /** @param head of the ticket's file */
    LeafList(Path folder, Checkpoint head, VerifyReport report) {
        this.folder = folder;
        this.head = head;
        this.report = report;
    }

    /**
     * Makes the tree of the head anew from the leaves, and counts those of the ticket.
     *
     * @param sealed entries of the file that the head covers
     * @param earlier a head that whoever asks holds; null if none was given
     */
    void look(String ticket, long sealed, VerifyArguments.@Nullable Head earlier) {
        long most = earlier == null ? head.size() : Math.max(earlier.size(), head.size());
        if (!read("ticket/" + ticket, most, earlier)) {
            return;
        }
        if (entries != sealed) {
            report.found(
                    "complete",
                    "ticket " + ticket,
                    "has " + entries + " leaves below this head, and the file has " + sealed + " sealed entries");
        } else {
            report.tell("The ticket has no further entry among the " + head.size() + " leaves of this head.");
        }
    }

    private boolean read(String stream, long most, VerifyArguments.@Nullable Head earlier) {
        long there;
        try {
            there = Checkpoint.parse(SignedNote.parse(Files.readAllBytes(folder.resolve("checkpoint")))
                            .text())
                    .size();
        } catch (IOException | IllegalArgumentException e) {
            report.unsure("The leaves in " + folder
                    + " have no checkpoint: whether the ticket has further entries was not looked at.");
            return false;
        }
        if (there < most) {
            report.unsure("The leaves in " + folder + " end at " + there + ", before leaf " + most
                    + ": whether the ticket has further entries was not looked at.");
            return false;
        }
        for (long n = 0; n * TilePath.FULL < most; n++) {
            TilePath path = TilePath.of(TilePath.ENTRIES, n, there);
            List<Leaf> leaves = Bundles.read(folder, path, report);
            if (leaves.isEmpty()) {
                return false;
            }
            for (Leaf leaf : leaves) {
                if (frontier.size() < most) {
                    add(leaf, stream, earlier);
                }
            }
        }
        return true;
    }

    private void add(Leaf leaf, String stream, VerifyArguments.@Nullable Head earlier) {
        if (frontier.size() < head.size() && leaf.stream().equals(stream)) {
            entries++;
        }
        frontier.add(leaf.leafHash());
        if (frontier.size() == head.size() && !frontier.root().equals(head.root())) {
            report.found("root", "leaves below " + head.size(), "have another root than the head of the ticket's file");
        }
        report.earlier(frontier, earlier);
    }
}
