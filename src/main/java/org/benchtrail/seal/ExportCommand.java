package org.benchtrail.seal;

import io.quarkus.runtime.QuarkusApplication;
import java.io.IOException;
import java.nio.file.Path;
import org.benchtrail.platform.LongWork;

/**
 * {@code export FOLDER}: seals what waits and writes the whole log with its records; into the same folder again, what is new. 0 if it is
 * written.
 */
public class ExportCommand implements QuarkusApplication {
    private final SealJob job;
    private final LogFolder folder;

    public ExportCommand(SealJob job, LogFolder folder) {
        this.job = job;
        this.folder = folder;
    }

    @Override
    public int run(String... words) {
        try {
            job.round();
            if (!job.stopped().isEmpty()) {
                System.err.println(job.stopped());
                return 1;
            }
            folder.export(Path.of(words[1]), new LongWork(System.out::println));
            System.out.println("Exported to " + words[1] + ".");
            return 0;
        } catch (IOException e) {
            System.err.println(words[1] + " cannot be written: " + e.getMessage());
            return 1;
        }
    }
}
