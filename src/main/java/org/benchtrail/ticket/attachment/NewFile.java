package org.benchtrail.ticket.attachment;

/** A file to be kept beside a ticket; {@code shows} says what it shows. */
public record NewFile(String name, String mediaType, byte[] content, String shows) {}
