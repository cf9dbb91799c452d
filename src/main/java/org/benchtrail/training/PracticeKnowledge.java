package org.benchtrail.training;

import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.ticket.Diagnoses;

/** What facts on a practice job are completed with: as on a ticket, without its people, files and devices. */
record PracticeKnowledge(JobSheet sheet, Policy policy, Diagnoses diagnoses) implements ServerKnowledge {
    @Override
    public Actor worker(String account) {
        throw new Invalid("to", "A practice job stays with whoever began it.");
    }

    @Override
    public int fileSize(String sha256) {
        throw new Invalid("sha256", "A practice job takes no files.");
    }

    @Override
    public void requireOriginal(String ticket) {
        throw new Invalid("duplicateOf", "A practice job is no duplicate of a ticket.");
    }

    @Override
    public Category category() {
        return sheet.opened().category();
    }

    @Override
    public Set<Caution> cautionsOfFinding(String finding) {
        return diagnoses.cautionsOf(sheet, finding);
    }

    @Override
    public Optional<Limit> limitOf(String finding) {
        return diagnoses.limitOf(sheet, finding);
    }

    @Override
    public Set<Caution> cautionsOfRepair() {
        return diagnoses.cautionsOfRepair(sheet);
    }
}
