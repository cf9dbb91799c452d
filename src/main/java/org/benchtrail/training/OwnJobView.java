package org.benchtrail.training;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.training.FaultWords;
import org.benchtrail.core.training.OwnJobCheck;
import org.jspecify.annotations.Nullable;

/**
 * A mentor's job on its page.
 *
 * @param id 0 before it is saved
 * @param wrong what is wrong with the text, by line
 * @param checking how far its check is, of 100; -1 if none is going on
 * @param result what its check came to; null if it was not checked
 * @param own whether the viewer wrote it and it is not withdrawn
 * @param older the version whose text this is, if it is not the newest; 0 else
 */
record OwnJobView(
        int id,
        int version,
        String title,
        String author,
        String text,
        List<OwnJobText.Fault> wrong,
        int checking,
        String checked,
        @Nullable Result result,
        List<Option> trainees,
        List<String> given,
        List<Version> versions,
        boolean own,
        boolean withdrawn,
        int older) {
    /** With what was typed and not saved, and told as that. */
    OwnJobView typed(String typed) {
        return new OwnJobView(
                id, version, title, author, typed, List.of(), -1, "", null, trainees, given, versions, own, withdrawn,
                older);
    }

    record Option(String value, String words) {}

    record Version(int version, String saved) {}

    /** What a check came to, in words. */
    record Result(
            boolean clean,
            List<String> refused,
            List<String> told,
            List<FaultLine> faults,
            List<PairLine> pairs,
            List<String> harm) {
        static Result of(OwnJobCheck.Result result) {
            return new Result(
                    result.clean(),
                    result.refused(),
                    result.told(),
                    result.faults().stream().map(FaultLine::of).toList(),
                    result.pairs().stream().map(PairLine::of).toList(),
                    result.harm());
        }
    }

    record FaultLine(String fault, String words, String shows, String solved, String minutes, String least) {
        static FaultLine of(OwnJobCheck.FaultRow row) {
            return new FaultLine(
                    row.fault(),
                    FaultWords.of(row.fault()),
                    row.atOnce() + " of " + row.drawn(),
                    row.solved() + " of " + row.played(),
                    row.played() == 0 ? "not drawn" : PracticeView.minutes(row.minutes()),
                    row.mended() == 0 ? "none" : PracticeView.minutes(row.least()));
        }
    }

    record PairLine(String fault, String other, String by, String deviations, String alike) {
        static PairLine of(OwnJobCheck.PairRow row) {
            return new PairLine(
                    row.fault(),
                    row.other(),
                    row.by().isEmpty() ? "nothing" : row.by(),
                    row.deviations() > 99 ? "always" : String.format(Locale.ROOT, "%.1f", row.deviations()),
                    row.named() ? "named alike" : "");
        }
    }

    /** What can be written of a device. */
    record Reference(
            String id,
            String title,
            List<String> faults,
            List<String> parameters,
            List<String> asked,
            boolean backedUp) {
        static List<Reference> all() {
            return Stream.of(Family.values()).map(Reference::of).toList();
        }

        private static Reference of(Family family) {
            return new Reference(
                    family.id(),
                    family.title(),
                    family.faults().stream()
                            .map(f -> f + ": " + FaultWords.of(f))
                            .toList(),
                    family.parameters().stream()
                            .map(p -> p.name() + ": " + OwnJobText.number(p.low()) + " to "
                                    + OwnJobText.number(p.high()) + (p.unit().isEmpty() ? "" : " " + p.unit())
                                    + ", usually " + OwnJobText.number(p.base()))
                            .toList(),
                    family.acts().stream()
                            .filter(a -> a.way() == DeviceAct.Way.ASK)
                            .map(a -> a.id() + ": " + a.label())
                            .toList(),
                    OwnJob.isBackedUp(family));
        }
    }
}
