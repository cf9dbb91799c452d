package org.benchtrail.platform.database;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * PostgreSQL refuses to run as root. On Linux root can step into a user namespace, where the same account has another number
 * and no privileges, while files and signals still belong to it.
 */
final class OrdinaryUser {
    private static final int ROOT = 0;

    /** The account "nobody": initdb insists on a number that has a name. Left unmapped, the kernel shows the same number. */
    private static final List<List<String>> NAMESPACES = List.of(
            List.of("unshare", "--user", "--map-user=65534", "--map-group=65534", "--"),
            List.of("unshare", "--user", "--"));

    private OrdinaryUser() {}

    /**
     * The words to put before a command so that it does not run as root; none if this process is not root.
     *
     * @param ours a file just made by this process
     * @throws DatabaseNotStarted if this is root and the machine allows no user namespace
     */
    static List<String> prefix(Path ours) throws IOException {
        if (!OwnerOnly.posix(ours) || !Integer.valueOf(ROOT).equals(Files.getAttribute(ours, "unix:uid"))) {
            return List.of();
        }
        return NAMESPACES.stream().filter(OrdinaryUser::works).findFirst().orElseThrow(OrdinaryUser::asRoot);
    }

    private static boolean works(List<String> namespace) {
        List<String> probe = new ArrayList<>(namespace);
        probe.add("true");
        try {
            Process process = new ProcessBuilder(probe)
                    .redirectErrorStream(true)
                    .redirectOutput(Redirect.DISCARD)
                    .start();
            return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException noSuchProgram) {
            return false;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private static DatabaseNotStarted asRoot() {
        return new DatabaseNotStarted(
                "PostgreSQL does not run as root, and this machine allows no user namespace to step"
                        + " out of it. Start Benchtrail as an ordinary user (in a container: name a user for it), or give it the"
                        + " address of a PostgreSQL server.");
    }
}
