package org.benchtrail.seal.offline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.seal.timestamp.TimeStamp;
import org.benchtrail.seal.timestamp.TimeStampAnswer;
import org.benchtrail.seal.timestamp.TimeStampRefused;
import org.benchtrail.seal.timestamp.TimeStampRequest;
import org.benchtrail.seal.timestamp.TimeStampRoots;
import org.jspecify.annotations.Nullable;

/** Time-stamps of heads beside an exported log: each is of the head that its name says, and of this log. */
public final class ExportedStamps {
    private static final String FOLDER = "timestamps";
    private static final Pattern NAME = Pattern.compile("([1-9][0-9]{0,17})\\.tsr");

    private final TreeMap<Long, Path> files;
    private final List<Checkpoint> heads = new ArrayList<>();

    private ExportedStamps(TreeMap<Long, Path> files) {
        this.files = files;
    }

    /** Where the one of the head of so many leaves is written. */
    public static String name(long size) {
        return FOLDER + "/" + size + ".tsr";
    }

    /** Those that are there; what bears another name is not read. */
    static ExportedStamps in(Path export) throws IOException {
        TreeMap<Long, Path> files = new TreeMap<>();
        Path folder = export.resolve(FOLDER);
        if (Files.isDirectory(folder)) {
            try (var all = Files.list(folder)) {
                for (Path file : all.filter(Files::isRegularFile).toList()) {
                    Matcher name = NAME.matcher(String.valueOf(file.getFileName()));
                    if (name.matches()) {
                        files.put(Long.parseLong(name.group(1)), file);
                    }
                }
            }
        }
        return new ExportedStamps(files);
    }

    boolean isOf(long size) {
        return files.containsKey(size);
    }

    /** The head that the leaves of this log make at a size. */
    void head(Checkpoint head) {
        heads.add(head);
    }

    void tell(@Nullable TimeStampRoots roots, VerifyReport report) throws IOException {
        for (Checkpoint head : heads) {
            Path file = files.remove(head.size());
            if (file != null) {
                tell(head, file, roots, report);
            }
        }
        for (long size : files.keySet()) {
            report.found("time-stamp", name(size), "is of a head that this log does not have");
        }
    }

    private static void tell(Checkpoint head, Path file, @Nullable TimeStampRoots roots, VerifyReport report)
            throws IOException {
        if (roots == null) {
            report.tell("There is a time-stamp of the head of " + head.size()
                    + " leaves; whose it is cannot be told without --timestamp-roots.");
            return;
        }
        try {
            if (Files.size(file) > TimeStampAnswer.LONGEST) {
                report.found("time-stamp", name(head.size()), "is longer than any answer is");
                return;
            }
            Hash imprint = TimeStampRequest.imprint(head.text());
            TimeStamp said = TimeStampAnswer.parse(Files.readAllBytes(file)).of(imprint, roots);
            report.tell("The head of " + head.size() + " leaves existed at " + said.at() + ", says " + said.by() + ".");
        } catch (TimeStampRefused e) {
            report.found("time-stamp", name(head.size()), e.sentence());
        }
    }
}
