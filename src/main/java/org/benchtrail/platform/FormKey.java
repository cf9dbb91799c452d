package org.benchtrail.platform;

import jakarta.inject.Named;
import jakarta.inject.Singleton;
import java.util.UUID;

/** The value of the hidden field that tells one sending of a form from another: made anew wherever a form is shown. */
@Singleton
@Named("formKey")
public class FormKey {
    /** Its name begins like that of the form's token: nobody typed either. */
    public static final String FIELD = "csrf-key";

    /** The field of the form's token. */
    public static final String TOKEN = "csrf-token";

    public String field() {
        return FIELD;
    }

    public String value() {
        return UUID.randomUUID().toString();
    }
}
