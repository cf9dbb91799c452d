package org.benchtrail.seal.offline;

import java.io.IOException;
import java.io.PrintStream;
import java.util.List;

/** {@code verify FOLDER}: says whether an export holds, and ends with a number that says the same. */
public final class VerifyCommand {
    private VerifyCommand() {}

    /** Answers with 0 holds and vouched for, 1 does not hold, 2 holds as far as can be told, 3 no export. */
    public static int run(List<String> words, PrintStream out) {
        try {
            VerifyReport report = new FolderVerifier(VerifyArguments.parse(words)).verify();
            report.lines().forEach(out::println);
            return report.exit();
        } catch (IOException | IllegalArgumentException e) {
            out.println(e instanceof IOException ? "Cannot be read: " + e.getMessage() : e.getMessage());
            return VerifyReport.NO_EXPORT;
        }
    }
}
