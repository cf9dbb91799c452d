package org.benchtrail.seal.offline;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.util.List;
import org.benchtrail.platform.LongWork;

/** {@code verify FOLDER}, or the file of one trail: says whether an export holds, and ends with a number that says the same. */
public final class VerifyCommand {
    private VerifyCommand() {}

    /** Says on standard error how far it is. Answers with 0 holds and vouched for, 1 does not hold, 2 holds as far as can be told, 3 no export. */
    public static int run(List<String> words, PrintStream out) {
        try {
            VerifyArguments asked = VerifyArguments.parse(words);
            VerifyReport report = Files.isRegularFile(asked.export())
                    ? new TrailVerifier(asked).verify()
                    : new FolderVerifier(asked, new LongWork(System.err::println)).verify();
            if (asked.json()) {
                out.println(report.json());
            } else {
                report.lines().forEach(out::println);
            }
            return report.exit();
        } catch (IOException | IllegalArgumentException e) {
            out.println(e instanceof IOException ? "Cannot be read: " + e.getMessage() : e.getMessage());
            return VerifyReport.NO_EXPORT;
        }
    }
}
