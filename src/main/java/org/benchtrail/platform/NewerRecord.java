package org.benchtrail.platform;

/** What is stored was written by a later release, and this one cannot read it: nothing is wrong with it. */
public final class NewerRecord extends RecordBroken {
    private static final long serialVersionUID = 1L;

    public NewerRecord(String sentence) {
        super(sentence);
    }
}
