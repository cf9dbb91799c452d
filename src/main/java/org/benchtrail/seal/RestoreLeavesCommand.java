package org.benchtrail.seal;

import io.quarkus.runtime.QuarkusApplication;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.io.IOException;
import java.nio.file.Path;

/**
 * {@code restore-leaves FOLDER}: after an old backup was restored, puts back the leaves that it lacks from a folder of the log. 0 if they
 * are there, 1 if they cannot be, 2 if the command was given wrongly.
 */
public class RestoreLeavesCommand implements QuarkusApplication {
    private final LeafRestore restore;

    public RestoreLeavesCommand(LeafRestore restore) {
        this.restore = restore;
    }

    @Override
    @ActivateRequestContext
    public int run(String... words) {
        try {
            LeafRestore.Restored done = restore.from(Path.of(words[1]));
            System.out.println("Put back " + done.leaves() + " leaves; the records of " + done.lost()
                    + " of them are lost. The same log goes on. Let the page Seal look at the whole site.");
            return 0;
        } catch (LeafRestore.Refused e) {
            System.err.println(e.getMessage());
        } catch (IOException e) {
            System.err.println("The folder cannot be read: " + e.getMessage());
        }
        return 1;
    }
}
