package org.benchtrail.limits;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import java.util.List;
import org.benchtrail.core.measure.LimitLibrary;
import org.benchtrail.proposals.Agreement;
import org.benchtrail.proposals.Difference;
import org.benchtrail.proposals.ProposedChange;

/** A limit of the site that allows what another forbids. */
@ApplicationScoped
class AdditionChange implements ProposedChange<LimitBook.Proposed> {
    private final Instance<LimitBook> book;

    AdditionChange(Instance<LimitBook> book) {
        this.book = book;
    }

    @Override
    public String name() {
        return "limit-added";
    }

    @Override
    public Class<LimitBook.Proposed> change() {
        return LimitBook.Proposed.class;
    }

    @Override
    public String words(LimitBook.Proposed change) {
        return "Add a looser limit, " + change.id();
    }

    @Override
    public List<Difference> differences(LimitBook.Proposed change) {
        LimitLibrary.Row row = book.get().fresh(change);
        String before = book.get()
                .stricter(row)
                .map(other -> other.limit().words() + ", " + other.id())
                .orElse("");
        return List.of(new Difference(row.quantity(), before, row.limit().words() + ", " + row.id()));
    }

    @Override
    public String make(LimitBook.Proposed change, Agreement agreed) {
        book.get().add(change, agreed);
        return "/limits";
    }
}
