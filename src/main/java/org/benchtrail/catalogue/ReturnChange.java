package org.benchtrail.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.benchtrail.proposals.Agreement;
import org.benchtrail.proposals.Difference;
import org.benchtrail.proposals.ProposedChange;

/** Going back to an earlier version of the catalogue. */
@ApplicationScoped
class ReturnChange implements ProposedChange<ReturnChange.GoingBack> {
    private final NewVersions versions;

    ReturnChange(NewVersions versions) {
        this.versions = versions;
    }

    /**
     * What is proposed.
     *
     * @param base version in force
     * @param number of the version to go back to
     */
    record GoingBack(int base, int number) {}

    @Override
    public String name() {
        return "catalogue-return";
    }

    @Override
    public Class<GoingBack> change() {
        return GoingBack.class;
    }

    @Override
    public String words(GoingBack change) {
        return "Go back from version " + change.base() + " of the catalogue to version " + change.number();
    }

    @Override
    public List<Difference> differences(GoingBack change) {
        return versions.ofReturn(change.base(), change.number());
    }

    @Override
    public String make(GoingBack change, Agreement agreed) {
        return versions.returned(change.base(), change.number(), agreed).page();
    }
}
