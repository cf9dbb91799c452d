package org.benchtrail.ticket.desk;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.WorkMark;
import org.benchtrail.platform.Option;

/** What mentors and supervisors remarked on the work; each remark is shown where it belongs. */
public record Remarks(List<Remark> all) {

    /**
     * A remark.
     *
     * @param about title of the requirement that it is about; empty if it is about none
     * @param mark what it says of that requirement, in words; empty if nothing
     */
    public record Remark(int entry, String requirement, String about, String mark, String text, String stamp) {}

    /** @param stamps writes who recorded something, and when */
    public static Remarks of(JobSheet sheet, Function<Stamp, String> stamps) {
        return new Remarks(sheet.all(Remarked.class).stream()
                .map(r -> remark(r, stamps.apply(r.stamp())))
                .toList());
    }

    private static Remark remark(StandingFact<Remarked> remarked, String stamp) {
        Remarked fact = remarked.fact();
        String code = Objects.requireNonNullElse(fact.requirement(), "");
        return new Remark(
                Objects.requireNonNullElse(fact.entry(), 0),
                code,
                Requirements.of(code).map(Requirement::title).orElse(""),
                Optional.ofNullable(fact.mark()).map(WorkMark::words).orElse(""),
                fact.text(),
                stamp);
    }

    /** On an entry. */
    public List<Remark> of(int entry) {
        return which(r -> r.entry() == entry);
    }

    /** On a requirement. */
    public List<Remark> on(String code) {
        return which(r -> r.requirement().equals(code));
    }

    private List<Remark> which(Predicate<Remark> which) {
        return all.stream().filter(which).toList();
    }

    /** The requirements that a remark may be about, by code. */
    public List<Option> requirements() {
        return Requirements.all().stream()
                .map(r -> new Option(r.code(), r.step().title() + ": " + r.title()))
                .toList();
    }
}
