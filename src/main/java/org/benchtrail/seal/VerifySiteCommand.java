package org.benchtrail.seal;

import io.quarkus.runtime.QuarkusApplication;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.io.PrintStream;
import java.util.List;
import org.benchtrail.platform.LongWork;

/**
 * {@code verify-site}: holds all that is stored against the log, as the page Seal does, and says how far it is. 0 if it holds, 1 if a
 * place does not, 2 if the look did not come to its end.
 */
public class VerifySiteCommand implements QuarkusApplication {
    private final SiteVerification verification;

    public VerifySiteCommand(SiteVerification verification) {
        this.verification = verification;
    }

    @Override
    @ActivateRequestContext
    public int run(String... words) {
        return run(System.out, System.err);
    }

    int run(PrintStream out, PrintStream err) {
        if (!verification.begin(SiteLooks.SERVER)) {
            err.println("A look at the whole site goes on already; the page Seal shows it.");
            return 2;
        }
        verification.work(SiteLooks.SERVER, new LongWork(err::println));
        SiteVerification.Looked looked = verification.looked();
        if (looked.stopped()) {
            err.println("The look was stopped at " + looked.done() + " of " + looked.size() + " leaves.");
            return 2;
        }
        List<VerificationRows.Finding> findings = looked.findings();
        findings.forEach(found -> out.println(found.what() + ": " + found.place() + ": " + found.sentence()));
        out.println(looked.size() + " leaves, every record and every ticket: "
                + (findings.isEmpty() ? "all of it holds." : "it does not hold at " + findings.size() + " places."));
        return findings.isEmpty() ? 0 : 1;
    }
}
