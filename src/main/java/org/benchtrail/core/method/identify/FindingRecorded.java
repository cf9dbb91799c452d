package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/** Something observed that bears on causes. A drive-failure finding puts data first from that moment on. */
public record FindingRecorded(@FreeText String text, boolean driveFailure) implements EvidenceFact {
    public FindingRecorded {
        FieldChecks t = new FieldChecks();
        text = t.required("text", text, FieldChecks.PARAGRAPH, "Say what was found.");
        t.done();
    }

    @Override
    public boolean comesFromDevice() {
        return true;
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    /** From a drive-failure finding on, data come first. */
    @Override
    public boolean isLessenedBy(@Nullable Fact replacement) {
        return driveFailure && !(replacement instanceof FindingRecorded now && now.driveFailure);
    }

    @Override
    public List<Sign> signs(JobSheet sheet) {
        return driveFailure ? List.of(Sign.of("drive-failure/true")) : List.of();
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(text, Source.SEEN));
    }

    @Override
    public String told(Telling reader) {
        return Told.all(text, driveFailure ? "a drive has failed" : "");
    }
}
