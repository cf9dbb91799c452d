package org.benchtrail.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.benchtrail.proposals.Agreement;
import org.benchtrail.proposals.Difference;
import org.benchtrail.proposals.ProposedChange;

/** Another text of the catalogue. */
@ApplicationScoped
class TextChange implements ProposedChange<TextChange.NewText> {
    private final NewVersions versions;

    TextChange(NewVersions versions) {
        this.versions = versions;
    }

    /**
     * What is proposed.
     *
     * @param base version that it was begun from
     * @param text YAML
     */
    record NewText(int base, String text) {}

    @Override
    public String name() {
        return "catalogue-text";
    }

    @Override
    public Class<NewText> change() {
        return NewText.class;
    }

    @Override
    public String words(NewText change) {
        return "Edit the catalogue, version " + change.base();
    }

    @Override
    public List<Difference> differences(NewText change) {
        return versions.ofText(change.base(), change.text());
    }

    @Override
    public String make(NewText change, Agreement agreed) {
        return versions.edited(change.base(), change.text(), agreed).page();
    }
}
