package org.benchtrail.platform.paper;

import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import io.quarkus.qute.TemplateInstance;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;

/**
 * A template as a PDF file. The template is well-formed XML and brings its own style; nothing outside it is fetched. The letters
 * are in the file, so that it looks alike everywhere; its drawings have
 * letters of the machine, drawn as lines, and its pictures are in it.
 */
public final class Paper {
    public static final String MEDIA_TYPE = "application/pdf";

    private static final String LETTERS = "/liberation/";

    private Paper() {}

    /** @throws UncheckedIOException if the template cannot be laid out */
    public static byte[] pdf(TemplateInstance template) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useExternalResourceAccessControl(
                (uri, type) -> uri.startsWith("data:image/jpeg;base64,"),
                ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
        builder.useFont(letters("LiberationSans-Regular"), "Letters", 400, FontStyle.NORMAL, true);
        builder.useFont(letters("LiberationSans-Bold"), "Letters", 700, FontStyle.NORMAL, true);
        builder.useFont(letters("LiberationMono-Regular"), "Typed", 400, FontStyle.NORMAL, true);
        builder.withHtmlContent(printable(template.render()), null);
        builder.toStream(out);
        try (BatikSVGDrawer drawings = new BatikSVGDrawer()) {
            builder.useSVGDrawer(drawings);
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static FSSupplier<InputStream> letters(String name) {
        return () -> Objects.requireNonNull(Paper.class.getResourceAsStream(LETTERS + name + ".ttf"), name);
    }

    /** Without what XML cannot hold; the filled diamond, which the letters lack, as the open one. */
    private static String printable(String html) {
        return html.replaceAll("[^\\t\\n\\r\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]", "\uFFFD")
                .replace('\u25c6', '\u25c7');
    }
}
