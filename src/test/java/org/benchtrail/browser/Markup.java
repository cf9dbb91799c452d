package org.benchtrail.browser;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import nu.validator.validation.SimpleDocumentValidator;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assertions;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXParseException;

/**
 * Whether the source of a page is the HTML of the standard, as the checker of its makers sees it. The checker is of 2020: what the
 * standard or browsers allow since then is no fault.
 */
final class Markup {
    private static final Pattern ALLOWED_SINCE = Pattern.compile("not supported in all browsers"
            + "|Element \u201c(h[23]|span)\u201d not allowed as child of element \u201csummary\u201d");
    private static final String SCHEMA = "http://s.validator.nu/html5-rdfalite.rnc";

    private static @Nullable SimpleDocumentValidator validator;

    private Markup() {}

    /** @throws AssertionError with every fault and the line it is in */
    static synchronized void assertValid(String name, String source) {
        Faults faults = new Faults(source);
        try {
            if (validator == null) {
                validator = new SimpleDocumentValidator(true);
                validator.setUpMainSchema(SCHEMA, faults);
            }
            validator.setUpValidatorAndParsers(faults, false, false);
            validator.checkHtmlInputSource(new InputSource(new StringReader(source)));
        } catch (Exception e) {
            throw new AssertionError(name + " could not be checked", e);
        }
        Assertions.assertEquals(List.of(), faults.found, name + " is not valid HTML");
    }

    private static final class Faults implements ErrorHandler {
        private final List<String> lines;
        private final List<String> found = new ArrayList<>();

        Faults(String source) {
            lines = source.lines().toList();
        }

        @Override
        public void warning(SAXParseException e) {
            add(e);
        }

        @Override
        public void error(SAXParseException e) {
            add(e);
        }

        @Override
        public void fatalError(SAXParseException e) {
            add(e);
        }

        private void add(SAXParseException e) {
            if (ALLOWED_SINCE.matcher(e.getMessage()).find()) {
                return;
            }
            int line = e.getLineNumber();
            String where =
                    line > 0 && line <= lines.size() ? lines.get(line - 1).strip() : "";
            found.add(e.getMessage() + " Line " + line + ": " + where);
        }
    }
}
