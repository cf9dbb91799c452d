package org.benchtrail.limits;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.proposals.Agreement;
import org.benchtrail.proposals.Difference;
import org.benchtrail.proposals.ProposedChange;

/** A limit of the site that is to be offered no more, or again. */
@ApplicationScoped
class OfferChange implements ProposedChange<OfferChange.Offer> {
    private final Instance<LimitBook> book;

    OfferChange(Instance<LimitBook> book) {
        this.book = book;
    }

    /** What is proposed. */
    record Offer(String id, boolean offered) {}

    @Override
    public String name() {
        return "limit-offered";
    }

    @Override
    public Class<Offer> change() {
        return Offer.class;
    }

    @Override
    public String words(Offer change) {
        return (change.offered() ? "Offer the limit " + change.id() + " again" : "Take out the limit " + change.id());
    }

    @Override
    public List<Difference> differences(Offer change) {
        LimitBook.Added limit = book.get().own(change.id());
        boolean offered = limit.retired() == null;
        new Invalid.Collector()
                .require(
                        offered != change.offered(),
                        "offered",
                        "Nothing would change: the limit is " + (offered ? "offered" : "out") + " already.")
                .throwIfAny();
        String words = limit.row().limit().words();
        return List.of(
                change.offered()
                        ? new Difference(limit.row().quantity(), "", words)
                        : new Difference(limit.row().quantity(), words, ""));
    }

    @Override
    public String make(Offer change, Agreement agreed) {
        book.get().offer(change.id(), change.offered(), agreed);
        return "/limits";
    }
}
